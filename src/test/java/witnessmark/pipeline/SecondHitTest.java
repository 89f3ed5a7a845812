package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.torque.Angle;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** The next fastener, the same again, or not to be told: one rule a test. */
class SecondHitTest {
  private static final String[] WINDOW = {"angle-min = \"20\"", "angle-max = \"70\""};

  private static Bench on(int n, String... lines) {
    return Bench.on(Bench.group(n, lines));
  }

  @Test
  void belowTheWindowATightOneWasHitAgainAndTheNextStaysDue() {
    Bench bench = on(3, WINDOW);
    bench.pull("50", "30");
    bench.pull("49", "33");
    Judged again = bench.pull("51", "1.8");
    assertThat(again.reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    assertThat(again.fastener()).contains("a/2");
    assertThat(again.alternatives()).containsExactly("a/1");
    assertThat(again.verdict()).contains(Verdict.IN_BAND);
    assertThat(again.effect()).isEqualTo(Effect.RECHECKED);
    assertThat(again.angleLow()).isEmpty();
    assertThat(again.text())
        .isEqualTo(
            "a/2 (final pass): 51 N.m is in the band of 45 to 55 N.m. It stands as it was. It"
                + " hardly turned, so it was tight before. What was expected is still due; if that"
                + " is tight, go over those counted as done.");
    assertThat(bench.pull("50", "31").fastener()).contains("a/3");
  }

  @Test
  void withoutAWindowTheFirstOfTheGroupsTurnsAreLearnt() {
    Bench bench = on(4);
    assertThat(bench.pull("50", "30").fastener()).contains("a/1");
    assertThat(bench.pull("50", "2").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    assertThat(bench.pull("50", "27").fastener()).contains("a/2");
  }

  /** One of 30 degrees, scatter 10 %: 30 − 4.586894 · 3 · √2 = 10.54. */
  @Test
  void betweenATightOneAndAFreshOneIsAsked() {
    Bench bench = on(3);
    bench.pull("50", "30");
    Judged asked = bench.pull("50", "10.5");
    assertThat(asked.reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(asked.effect()).isEqualTo(Effect.ASKS);
    assertThat(asked.alternatives()).containsExactly("a/2", "a/1");
    assertThat(asked.text())
        .startsWith("It could be the next one, or a tight one hit again: a/2, a/1. Say which");
    assertThat(bench.pull("50", "10.6").reason()).isEqualTo(Reason.NEXT_IN_SEQUENCE);
  }

  @Test
  void whereAFreshOneMayTurnAsLittleAsATightOneItIsAsked() {
    Bench bench = on(3, "recheck-angle = \"12\"");
    bench.pull("50", "30");
    assertThat(bench.pull("50", "12").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(bench.pull("50", "10").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    Bench window = on(3, "angle-min = \"3\"", "angle-max = \"70\"");
    window.pull("50", "30");
    assertThat(window.pull("50", "3").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(window.pull("50", "2.9").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    assertThat(window.pull("50", "5.1").effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aSmallAngleIsAskedAboutBeforeTheGroupHasShownAny() {
    Bench bench = Bench.on(Bench.group(2) + Bench.step("b", 2));
    bench.hit("50 N.m"); // no angle: nothing is learnt
    Judged asked = bench.pull("50", "4");
    assertThat(asked.reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(asked.alternatives()).containsExactly("a/2", "a/1");
  }

  @Test
  void whereNothingIsTightYetASmallAngleIsTheNextOnes() {
    assertThat(on(2).pull("50", "4").effect()).isEqualTo(Effect.CREDITED);
    assertThat(on(2, WINDOW).pull("50", "4").verdict()).contains(Verdict.ANGLE_LOW);
  }

  @Test
  void aboveTheRecheckAngleAndBelowTheWindowTheTorqueWasReachedTooEarly() {
    Bench bench = on(2, WINDOW);
    bench.pull("50", "30");
    Judged early = bench.pull("50", "5.1");
    assertThat(early.fastener()).contains("a/2");
    assertThat(early.verdict()).contains(Verdict.ANGLE_LOW);
    assertThat(early.effect()).isEqualTo(Effect.AGAIN);
  }

  @Test
  void aRecheckAngleOfZeroSaysThatTheAngleTellsNothing() {
    Bench bench = on(2, "recheck-angle = \"0\"");
    bench.pull("50", "30");
    assertThat(bench.pull("50", "1").effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aTightOneHitAboveItsBandIsAskedAboutBecauseItIsNotKnownWhich() {
    Bench bench = on(3, WINDOW);
    bench.pull("50", "30");
    bench.pull("50", "30");
    Judged asked = bench.pull("55.1", "3");
    assertThat(asked.reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(asked.alternatives()).containsExactly("a/3", "a/2");
    long n = bench.size() - 1;
    bench.person(
        new Assign(
            n,
            (Entry.TorqueTaken) bench.log().get((int) n),
            bench.jobName(),
            Optional.of("a/1"),
            "badge-07",
            "I saw it"));
    assertThat(bench.job().condition(0).nonconforming()).isTrue();
  }

  @Test
  void aHitThatCouldNotBeOnATightOneOfAnotherGroupIsTheNextOnes() {
    Bench bench =
        Bench.on(
            Bench.group(1, WINDOW)
                + Bench.step("b", 1, WINDOW).replace("torque = \"50 N.m\"", "torque = \"60 N.m\""));
    bench.pull("45", "30");
    // 56.25 is a quarter above 45
    assertThat(bench.pull("56.25", "3").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(bench.pull("56.26", "3").fastener()).contains("b/1");
  }

  @Test
  void oneThatBeganToTurnAsATightOneIsAskedAboutThoughNothingIsTightOnRecord() {
    Judged asked = began(on(2), "50", "", "45");
    assertThat(asked.reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(asked.alternatives()).containsExactly("a/1");
  }

  @Test
  void belowTheBandOfATightOneNothingIsKnownAndTheTurnIsNotCounted() {
    Bench bench = on(2, WINDOW);
    bench.pull("50", "30");
    for (int i = 0; i < 20; i++) {
      Judged low = bench.pull("44", "1.5");
      assertThat(low.fastener()).contains("a/2");
      assertThat(low.effect()).isEqualTo(Effect.AGAIN);
      assertThat(low.angleTotal()).isEmpty();
    }
    assertThat(bench.pull("50", "1.5").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    assertThat(bench.job().passesDone()).isEqualTo(1);
  }

  @Test
  void afterAnUnderTorqueTheRestOfTheTurnGoesOn() {
    Bench bench = on(3, WINDOW);
    bench.pull("50", "30");
    bench.pull("40", "24");
    // 24 · (50 − 40) / 40 = 6 degrees are left at least, half of that is 3
    assertThat(bench.pull("50", "2.9").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    Judged rest = bench.pull("50", "3");
    assertThat(rest.effect()).isEqualTo(Effect.CREDITED);
    assertThat(rest.angleTotal()).contains(Angle.of("27"));
  }

  @Test
  void afterAnUnderTorqueASecondHitTooLowDoesNotAddToTheTurn() {
    Bench bench = on(3, WINDOW);
    bench.pull("50", "30");
    bench.pull("30", "15");
    assertThat(bench.pull("44", "1.5").angleTotal()).isEmpty();
    assertThat(bench.pull("44", "7").angleTotal()).contains(Angle.of("22"));
  }

  @Test
  void theFastenerThatThisWrenchPulledLastIsMeant() {
    Bench bench =
        Bench.on(
            Bench.group(3, "wrenches = [\"TW-1\"]", WINDOW[0], WINDOW[1])
                + Bench.step("b", 3, "after = []", "wrenches = [\"TW-2\"]", WINDOW[0], WINDOW[1]));
    bench.pull("50", "30");
    bench.hit("TW-2", "50 N.m", "30", "");
    Judged again = bench.pull("50", "2");
    assertThat(again.fastener()).contains("a/1");
    assertThat(again.alternatives()).isEmpty();
    assertThat(bench.hit("TW-2", "50 N.m", "2", "").judged().fastener()).contains("b/1");
  }

  @Test
  void aLoosenedFastenerIsNoLongerTight() {
    Bench bench = on(2);
    bench.pull("50", "30");
    bench.loosen("a/1");
    assertThat(bench.pull("50", "3").fastener()).contains("a/1");
    assertThat(bench.pull("50", "3").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
  }

  @Test
  void oneThatIsPendingAgainThoughTightIsAskedAboutOrRefusedByItsWindow() {
    String depends = Bench.step("b", 2, "after = [\"a\"]");
    Bench bench = Bench.on(Bench.group(1) + depends);
    bench.pull("50", "30");
    bench.pull("50", "30");
    bench.pull("50", "30");
    bench.loosen("a/1");
    bench.pull("50", "30");
    assertThat(bench.pull("50", "2").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(bench.pull("50", "30").fastener()).contains("b/1");
  }

  @Test
  void aNamedFastenerThatHardlyTurnsBesideCountedOnesStandsForOneOfThem() {
    Bench bench = on(3);
    bench.pull("50", "30");
    Judged named = bench.hit("TW-1", "50 N.m", "2", "a/2").judged();
    assertThat(named.reason()).isEqualTo(Reason.TIGHT_BEFORE);
    assertThat(named.fastener()).contains("a/1");
    assertThat(named.effect()).isEqualTo(Effect.RECHECKED);
    assertThat(bench.pull("50", "9").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
  }

  @Test
  void aGroupInAnyOrderTellsSecondHitsJustSo() {
    Bench bench = on(3, "order = \"any\"", WINDOW[0], WINDOW[1]);
    assertThat(bench.pull("50", "30").reason()).isEqualTo(Reason.COUNTED_IN_GROUP);
    assertThat(bench.pull("50", "2").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    bench.pull("50", "30");
    bench.pull("50", "30");
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void withoutAngleAWrenchThatCameTooSoonHitTheSameAgain() {
    Bench bench = on(3, "seconds-between = \"1.5\"");
    assertThat(at(bench, "TW-1", 10, "50").fastener()).contains("a/1");
    Judged again = at(bench, "TW-1", 11.499, "52");
    assertThat(again.reason()).isEqualTo(Reason.HIT_AGAIN_BY_TIME);
    assertThat(again.fastener()).contains("a/1");
    assertThat(again.effect()).isEqualTo(Effect.RECHECKED);
    assertThat(at(bench, "TW-1", 12.999, "50").fastener()).contains("a/2");
    assertThat(at(bench, "TW-2", 13, "50").fastener()).contains("a/3");
  }

  @Test
  void tooSoonAndAboveTheBandIsAskedAndTooSoonAfterAnUnderTorqueGoesOn() {
    Bench bench = on(3, "seconds-between = \"1.5\"");
    at(bench, "TW-1", 10, "40");
    assertThat(at(bench, "TW-1", 10.8, "50").effect()).isEqualTo(Effect.CREDITED);
    assertThat(at(bench, "TW-1", 11.5, "56").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(at(bench, "TW-1", 12, "40").fastener()).contains("a/2");
  }

  private static Judged at(Bench bench, String wrench, double second, String torque) {
    TorqueEvent event = bench.event(wrench, torque + " N.m", "", Direction.CW, "");
    return taken(
        bench,
        new TorqueEvent(
            wrench,
            event.number(),
            Optional.of(Bench.START.plusMillis(Math.round(second * 1000))),
            event.torque(),
            Optional.empty(),
            Direction.CW,
            Optional.empty(),
            Optional.empty()));
  }

  private static Judged taken(Bench bench, TorqueEvent event) {
    return ((Entry.TorqueTaken) bench.take(event).entries().get(0)).judged();
  }

  @Test
  void withoutAngleTheTorqueAtWhichItBeganToTurnTells() {
    Bench bench = on(4);
    assertThat(began(bench, "50", "", "5").fastener()).contains("a/1");
    Judged again = began(bench, "50", "", "30");
    assertThat(again.reason()).isEqualTo(Reason.HIT_AGAIN_BY_BREAKAWAY);
    assertThat(again.effect()).isEqualTo(Effect.RECHECKED);
    assertThat(began(bench, "50", "", "29.9").fastener()).as("no evidence").contains("a/2");
    assertThat(began(bench, "50", "", "19.9").fastener()).contains("a/3");
  }

  @Test
  void whereAngleAndBreakawayContradictItIsAsked() {
    Bench bench = on(4, WINDOW);
    began(bench, "50", "30", "5");
    assertThat(began(bench, "50", "30", "45").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(began(bench, "50", "2", "5").reason()).isEqualTo(Reason.NEXT_OR_AGAIN);
    assertThat(began(bench, "50", "2", "45").reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    assertThat(began(bench, "50", "30", "5").fastener()).contains("a/2");
  }

  @Test
  void whatTheAngleLeavesOpenTheBreakawayMayTell() {
    Bench bench = on(3, "recheck-angle = \"12\"");
    began(bench, "50", "30", "5");
    assertThat(began(bench, "50", "12", "45").reason()).isEqualTo(Reason.HIT_AGAIN_BY_BREAKAWAY);
    assertThat(began(bench, "50", "12", "5").fastener()).contains("a/2");
  }

  @Test
  void oneThatAnEarlierPassLeftHeldBeginsToTurnThere() {
    Bench bench = on(2, passes("snug", "30 N.m", "final", "50 N.m", ""));
    began(bench, "30", "", "3");
    began(bench, "30", "", "3");
    assertThat(began(bench, "50", "", "31").fastener()).as("held at 30").contains("a/1");
    assertThat(began(bench, "50", "", "48").reason()).isEqualTo(Reason.HIT_AGAIN_BY_BREAKAWAY);
  }

  private static Judged began(Bench bench, String torque, String angle, String breakaway) {
    TorqueEvent event = bench.event("TW-1", torque + " N.m", angle, Direction.CW, "");
    return taken(
        bench,
        new TorqueEvent(
            event.wrench(),
            event.number(),
            event.time(),
            event.torque(),
            event.angle(),
            Optional.of(Torque.parse(breakaway + " N.m")),
            Direction.CW,
            Optional.empty(),
            Optional.empty()));
  }

  private static String passes(String one, String first, String two, String second, String lines) {
    return "[[step.pass]]\nname = \""
        + one
        + "\"\ntorque = \""
        + first
        + "\"\ntolerance = \"10 %\"\n[[step.pass]]\nname = \""
        + two
        + "\"\ntorque = \""
        + second
        + "\"\ntolerance = \"10 %\"\n"
        + lines;
  }

  @Test
  void aPassThatChecksCreditsWhatHardlyTurnsAndStopsAtWhatWasNotTight() {
    Bench bench = on(3, passes("final", "50 N.m", "check", "50 N.m", "check = true"));
    for (int i = 0; i < 3; i++) {
      bench.pull("50", "30");
    }
    Judged good = bench.pull("52", "1.5");
    assertThat(good.fastener()).contains("a/1");
    assertThat(good.pass()).contains("check");
    assertThat(good.effect()).isEqualTo(Effect.CREDITED);
    assertThat(good.angleHigh()).contains("5");
    assertThat(bench.hit("50 N.m").judged().effect()).as("no angle").isEqualTo(Effect.CREDITED);
    Judged loose = bench.pull("50", "5.1");
    assertThat(loose.fastener()).contains("a/3");
    assertThat(loose.verdict()).contains(Verdict.ANGLE_HIGH);
    assertThat(loose.effect()).isEqualTo(Effect.NONCONFORMING);
    assertThat(loose.text())
        .startsWith("a/3 (check pass): 5.1 degrees is too much for 0 to 5 degrees.");
  }

  @Test
  void inAPassThatChecksALooseOneIsFoundEvenBelowItsBandAndSmallMovesDoNotAddUp() {
    String[] lines = {passes("final", "50 N.m", "check", "50 N.m", "check = true")};
    Bench bench = on(1, lines);
    bench.pull("50", "30");
    for (int i = 0; i < 9; i++) {
      assertThat(bench.pull("44", "1.5").effect()).isEqualTo(Effect.AGAIN);
    }
    assertThat(bench.pull("50", "-0.2").effect()).isEqualTo(Effect.CREDITED);
    Bench loose = on(1, lines);
    loose.pull("50", "30");
    assertThat(loose.pull("40", "20").effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void amongSeveralOpenOnesTheAngleTellsWhereTheTorqueDoesNot() {
    Bench bench =
        Bench.on(
            Bench.group(2, "angle-min = \"20\"", "angle-max = \"40\"")
                + Bench.step("b", 2, "after = []", "angle-min = \"100\"", "angle-max = \"200\""));
    Judged far = bench.pull("50", "150");
    assertThat(far.reason()).isEqualTo(Reason.ONLY_ANGLE_THAT_FITS);
    assertThat(far.fastener()).contains("b/1");
    assertThat(far.alternatives()).containsExactly("a/1");
    assertThat(bench.pull("50", "30").fastener()).contains("a/1");
    assertThat(bench.pull("50", "60").reason()).isEqualTo(Reason.SEVERAL_POSSIBLE);
    Judged again = bench.pull("50", "2");
    assertThat(again.reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
    assertThat(again.fastener()).as("pulled last").contains("a/1");
  }

  @Test
  void aReadingTooLowHintsAtWhereItWouldFit() {
    Bench bench = Bench.on(Bench.group(2) + small("b"));
    Judged low = bench.pull("30", "15");
    assertThat(low.effect()).isEqualTo(Effect.AGAIN);
    assertThat(low.alternatives()).containsExactly("b/1");
    assertThat(low.text())
        .endsWith(" It would be right for b/1: if you were there, scan it first.");
  }

  @Test
  void aReadingTooHighThatIsRightForAnotherIsAskedAbout() {
    Bench bench = Bench.on(Bench.head() + small("b") + Bench.step("a", 2));
    Judged high = bench.pull("50", "15");
    assertThat(high.reason()).isEqualTo(Reason.FITS_ELSEWHERE);
    assertThat(high.effect()).isEqualTo(Effect.ASKS);
    assertThat(high.alternatives()).containsExactly("b/1", "a/1");
    assertThat(bench.pull("60", "15").effect()).isEqualTo(Effect.NONCONFORMING);
  }

  private static String small(String id) {
    return Bench.step(
        id, 1, "[[step.pass]]\nname = \"final\"\ntorque = \"30 N.m\"\ntolerance = \"10 %\"");
  }

  @Test
  void aHitAboveTheBandWhenNothingIsDueIsAskedAbout() {
    Bench bench = on(2);
    bench.pull("50", "30");
    bench.pull("50", "30");
    assertThat(bench.pull("50", "2").reason()).isEqualTo(Reason.NOTHING_LEFT);
    Judged high = bench.pull("56", "2");
    assertThat(high.reason()).isEqualTo(Reason.SEVERAL_POSSIBLE);
    assertThat(high.alternatives()).containsExactly("a/2");
    assertThat(bench.job().complete()).isFalse();
  }

  @Test
  void aSecondHitDoesNotTakeThePlaceOfTheNext() {
    Bench bench = on(3, WINDOW);
    List<String> done =
        List.of(
            bench.pull("50", "30").effect().code(),
            bench.pull("50", "1").effect().code(), // the same again, taken for the second
            bench.pull("50", "30").effect().code(),
            bench.pull("50", "30").effect().code());
    assertThat(done).containsExactly("credited", "rechecked", "credited", "credited");
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aReadingWithoutNumberOrTimeIsToldByItsAngleAllTheSame() {
    Bench bench = on(2, WINDOW);
    bench.pull("50", "30");
    TorqueEvent bare =
        new TorqueEvent(
            "TW-1",
            OptionalLong.empty(),
            Optional.<Instant>empty(),
            Torque.parse("51 N.m"),
            Optional.of(Angle.of("1")),
            Direction.CW,
            Optional.empty(),
            Optional.empty());
    assertThat(taken(bench, bare).reason()).isEqualTo(Reason.HIT_AGAIN_BY_ANGLE);
  }
}
