package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.badge.PrivateHalf;
import witnessmark.desk.Assign;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolKey;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.entry.Role;
import witnessmark.entry.Signed;
import witnessmark.torque.Angle;

/** Tight fasteners that are pulled on, pulled over, undone or not replaced, where others count. */
class TightOnesTest {
  private static final String[] WINDOW = {"angle-min = \"22\"", "angle-max = \"38\""};

  private static Bench on(int n, String... lines) {
    return Bench.on(Bench.group(n, lines));
  }

  private static void replace(Bench bench, String fastener) {
    bench.person(
        new Dispose(bench.jobName(), fastener, Disposition.REPLACE, "badge-07", "new bolt"));
  }

  /** Held at 45: 5 + 38 · (48 − 45)/(0.75 · 48) = 8.17 degrees at most. */
  @Test
  void aTightOneTurnsOnByWhatTheTorqueRises() {
    Bench bench = on(3, WINDOW);
    bench.pull("45", "30");
    assertThat(bench.pull("48", "8.1").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    Bench further = on(3, WINDOW);
    further.pull("45", "30");
    Judged crossed = further.pull("48", "8.2");
    assertThat(crossed.fastener()).contains("a/2");
    assertThat(crossed.effect()).isEqualTo(Effect.AGAIN);
  }

  /**
   * In a second pass the turn begins where the first ended: 5 + 38 · (48 − 45)/(48 · (1 − 22/45)).
   */
  @Test
  void inALaterPassTheTurnBeginsWhereThePassBeforeEnded() {
    Bench bench =
        on(
            2,
            "[[step.pass]]\nname = \"snug\"\nmin = \"20 N.m\"\nmax = \"22 N.m\"",
            "[[step.pass]]\nname = \"final\"\nmin = \"45 N.m\"\nmax = \"55 N.m\"",
            "angle-min = \"22\"\nangle-max = \"38\"");
    bench.pull("21", "30");
    bench.pull("21", "30");
    bench.pull("45", "30");
    assertThat(bench.pull("48", "9.6").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
  }

  @Test
  void aPullPastTheBandIsAskedAboutUnlessItTurnedAsAFreshOne() {
    Bench bench = on(3, WINDOW);
    bench.pull("45", "30");
    Judged asked = bench.pull("65", "13");
    assertThat(asked.reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(asked.alternatives()).containsExactly("a/2", "a/1");
    Bench plain = on(3, WINDOW);
    plain.pull("45", "30");
    Judged over = plain.pull("65", "31");
    assertThat(over.fastener()).contains("a/2");
    assertThat(over.effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void aPullPastTheBandIsTheFirstOnesWhereNoneOfItsGroupIsTight() {
    Bench bench = on(3, WINDOW);
    assertThat(bench.pull("65", "13").fastener()).contains("a/1");
  }

  @Test
  void oneLetGoBelowItsBandHasTurnedOnlyAPartOfTheWay() {
    Bench bench = on(3);
    bench.pull("50", "30");
    bench.pull("50", "31");
    Judged low = bench.pull("35", "15");
    assertThat(low.effect()).isEqualTo(Effect.AGAIN);
    assertThat(low.angleTotal()).contains(Angle.of("15"));
    Judged rest = bench.pull("50", "12");
    assertThat(rest.effect()).isEqualTo(Effect.CREDITED);
    assertThat(rest.angleTotal()).contains(Angle.of("27"));
  }

  @Test
  void oneToBeReplacedThatHardlyTurnsWasNotReplaced() {
    Bench bench = on(2);
    bench.pull("56", "33");
    replace(bench, "a/1");
    Judged same = bench.pull("50", "1.5");
    assertThat(same.fastener()).contains("a/1");
    assertThat(same.effect()).isEqualTo(Effect.RECHECKED);
    assertThat(same.text())
        .isEqualTo(
            "a/1 (final pass): 50 N.m is in the band of 45 to 55 N.m. It stands as it was. It hardly"
                + " turned, so what is to be reworked or replaced is still in: undo it first.");
    assertThat(bench.hit("TW-1", "50 N.m", "1.5", "a/1").judged().reason())
        .isEqualTo(Reason.NOT_REPLACED);
    assertThat(bench.job().passesDone()).isZero();
    assertThat(bench.pull("50", "30").effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void whatIsUndoneRightAfterTheDecisionIsTheOneToBeReplaced() {
    Bench bench = on(3);
    bench.pull("50", "30");
    bench.pull("56", "33");
    replace(bench, "a/2");
    assertThat(bench.loosen("").judged().reason()).isEqualTo(Reason.LOOSENED_FOR_REWORK);
    assertThat(bench.loosen("").judged().reason())
        .as("it is undone already, so another was")
        .isEqualTo(Reason.LOOSENED_WHICH);
  }

  @Test
  void whatIsUndoneLaterIsAsked() {
    Bench bench = on(3);
    bench.pull("50", "30");
    bench.pull("56", "33");
    replace(bench, "a/2");
    bench.pull("50", "30");
    assertThat(bench.loosen("").judged().reason()).isEqualTo(Reason.LOOSENED_WHICH);
  }

  /** The low pull may have been on any bolt; the one undone, on one that was counted. */
  @Test
  void aNameThatOnlyHadALowPullByCountStandsForOneThatWasCounted() {
    Bench bench = on(3);
    bench.pull("50", "30");
    bench.pull("35", "28");
    Judged undone = bench.loosen("a/2").judged();
    assertThat(undone.reason()).isEqualTo(Reason.TIGHT_BEFORE);
    assertThat(undone.fastener()).contains("a/1");
    assertThat(bench.job().passesDone()).isZero();
  }

  @Test
  void aNameWhoseLowPullWasNamedIsBelieved() {
    Bench bench = on(3);
    bench.pull("50", "30");
    bench.hit("TW-1", "35 N.m", "28", "a/2");
    Judged undone = bench.loosen("a/2").judged();
    assertThat(undone.reason()).isEqualTo(Reason.NAMED_BY_EVENT);
    assertThat(bench.job().passesDone()).isEqualTo(1);
  }

  @Test
  void aReadingAboveTheBandThatIsRightForAPassToComeIsAsked() {
    Bench bench =
        Bench.on(
            Bench.group(1)
                + Bench.step(
                    "b",
                    1,
                    "[[step.pass]]\nname = \"snug\"\nmin = \"20 N.m\"\nmax = \"24 N.m\"",
                    "[[step.pass]]\nname = \"final\"\nmin = \"81 N.m\"\nmax = \"99 N.m\""));
    Judged asked = bench.hit("90 N.m").judged();
    assertThat(asked.reason()).isEqualTo(Reason.FITS_ELSEWHERE);
    assertThat(asked.alternatives()).containsExactly("a/1", "b/1");
  }

  @Test
  void oneAcceptedAsItIsWithoutAPullOfItsOwnIsNoneThatWasHit() {
    Bench bench = Bench.on(Bench.group(1) + Bench.step("b", 3, "tries = 1"));
    bench.pull("50", "30");
    assertThat(bench.pull("44", "1.5").effect()).isEqualTo(Effect.NONCONFORMING);
    bench.person(
        new Dispose(bench.jobName(), "b/1", Disposition.USE_AS_IS, "badge-07", "measured"));
    bench.pull("50", "30");
    assertThat(bench.pull("50", "1.5").fastener()).contains("b/2");
    assertThat(bench.pull("60", "13").alternatives()).containsExactly("b/3", "b/2");
  }

  @Test
  void thatAReadingPastTheBandWasOnNoneIsForQualityToSay() {
    Bench bench = on(3, WINDOW);
    bench.enrol("badge-08", Role.TECHNICIAN);
    bench.pull("45", "30");
    bench.pull("65", "13");
    long n = bench.size() - 1;
    Entry.TorqueTaken asked = (Entry.TorqueTaken) bench.log().get((int) n);
    assertThatThrownBy(() -> bench.person(aside(bench, n, asked, "badge-08")))
        .isInstanceOf(Declined.class)
        .hasMessage(
            "65 N.m is too much for a/2: only quality may say that it was on none. Say which it was"
                + " (assign). Ask quality: badge-07.");
    bench.person(aside(bench, n, asked, "badge-07"));
    assertThat(bench.job().questions()).isEmpty();
  }

  @Test
  void whereQualityHoldsAKeyItSaysSoWithIt() {
    PrivateHalf.Pair pair = PrivateHalf.generate();
    Optional<Pen> pen = Optional.of(pair.privateHalf()::sign);
    Bench bench = on(3, WINDOW);
    bench.decided(new EnrolKey("badge-07", pair.publicHalf().base64(), "badge-07"), pen);
    bench.pull("45", "30");
    bench.pull("65", "13");
    long n = bench.size() - 1;
    Assign aside = aside(bench, n, (Entry.TorqueTaken) bench.log().get((int) n), "badge-07");
    assertThatThrownBy(() -> bench.decided(aside, Optional.empty()))
        .isInstanceOf(Declined.class)
        .hasMessageContaining("name its file (--sign-with FILE)");
    assertThat(Signed.key(bench.decided(aside, pen).get(0))).isPresent();
  }

  @Test
  void thatAHarmlessReadingWasOnNoneAnybodyMaySay() {
    Bench bench = on(3);
    bench.enrol("badge-08", Role.TECHNICIAN);
    bench.pull("50", "30");
    assertThat(bench.pull("50", "8").effect()).isEqualTo(Effect.ASKS);
    long n = bench.size() - 1;
    bench.person(aside(bench, n, (Entry.TorqueTaken) bench.log().get((int) n), "badge-08"));
    assertThat(bench.job().questions()).isEmpty();
  }

  private static Assign aside(Bench bench, long n, Entry.TorqueTaken asked, String by) {
    return new Assign(n, asked, bench.jobName(), Optional.empty(), by, "on the test rig");
  }
}
