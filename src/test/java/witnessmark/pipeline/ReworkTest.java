package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Attest;
import witnessmark.desk.Dispose;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.torque.Verdict;

/** What may follow a bad tightening: fasteners used once, tries, and confirmations renewed. */
class ReworkTest {
  private static final String LOCKER =
      "[[step]]\nid = \"locker\"\nkind = \"attest\"\ntitle = \"Locker\"\n"
          + "statement = \"Applied.\"\nrenew = true\n";

  private static void dispose(Bench bench, String fastener, Disposition disposition) {
    bench.person(new Dispose(bench.jobName(), fastener, disposition, "badge-07", "decided"));
  }

  private static void attest(Bench bench, String step) {
    bench.person(new Attest(bench.jobName(), step, "badge-07"));
  }

  private static void declined(Bench bench, Disposition disposition, String why) {
    assertThatThrownBy(() -> dispose(bench, "a/1", disposition)).hasMessage(why);
  }

  @Test
  void aFastenerUsedOnceThatIsLoosenedIsReplaced() {
    Bench bench =
        Bench.on(Bench.group(2, "single-use = true") + Bench.step("b", 1, "after = [\"a\"]"));
    for (int i = 0; i < 3; i++) {
      bench.hit("50 N.m");
    }
    Entry.TorqueTaken loosened = bench.loosen("a/1");
    assertThat(loosened.judged().effect()).isEqualTo(Effect.NONCONFORMING);
    assertThat(loosened.judged().verdict()).isEmpty();
    assertThat(loosened.judged().undoes()).containsExactly("b:final");
    assertThat(loosened.judged().text())
        .isEqualTo(
            "a/1 (final pass): loosened with 30 N.m. It may be used only once."
                + " Nonconforming: stop here, somebody must decide (dispose)."
                + " Pending again with it: b:final. The reading itself names it.");
    assertThat(bench.job().condition(0).done()).isZero();
    assertThat(bench.hitOn("a/1", "50 N.m").judged().effect()).isEqualTo(Effect.NONE);
    declined(
        bench, Disposition.REWORK, "Fastener a/1 may be used only once. Choose: replace, scrap.");
    declined(
        bench,
        Disposition.USE_AS_IS,
        "Fastener a/1 was loosened: there is nothing to accept." + " Choose: replace, scrap.");
    dispose(bench, "a/1", Disposition.REPLACE);
    assertThat(bench.loosen("").judged().reason()).isEqualTo(Reason.LOOSENED_FOR_REWORK);
    assertThat(bench.job().condition(0).nonconforming()).as("the old one came out").isFalse();
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
    assertThat(bench.hit("50 N.m").judged().fastener()).contains("b/1");
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aFastenerUsedOnceIsSpentByAnyPullButNotByRunningItDown() {
    Bench bench = Bench.on(Bench.group(1, "single-use = true"));
    assertThat(bench.loosen("a/1").judged().effect()).isEqualTo(Effect.LOOSENED);
    bench.hit("40 N.m");
    assertThat(bench.loosen("").judged().effect()).isEqualTo(Effect.NONCONFORMING);
    assertThat(bench.loosen("a/1").judged().effect())
        .as("turned out further")
        .isEqualTo(Effect.LOOSENED);
    assertThat(bench.job().condition(0).nonconforming()).isTrue();
  }

  @Test
  void oneThatIsSpentStaysSpentWhateverIsDoneToIt() {
    Bench bench = Bench.on(Bench.group(1, "single-use = true"));
    bench.hit("50 N.m");
    bench.loosen("a/1");
    assertThat(bench.hitOn("a/1", "70 N.m").judged().effect()).isEqualTo(Effect.NONCONFORMING);
    declined(
        bench,
        Disposition.USE_AS_IS,
        "Fastener a/1 was loosened since entry 8, or what it depends on was:"
            + " there is nothing to accept. Choose: replace, scrap.");
  }

  @Test
  void anOvertightenedFastenerUsedOnceIsReplacedOrAcceptedButNotReworked() {
    Bench bench = Bench.on(Bench.group(1, "single-use = true"));
    bench.hit("60 N.m");
    declined(
        bench,
        Disposition.REWORK,
        "Fastener a/1 may be used only once. Choose: replace, use-as-is, scrap.");
    dispose(bench, "a/1", Disposition.USE_AS_IS);
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void theLastTryThatFailsMakesTheFastenerNonconforming() {
    Bench bench = Bench.on(Bench.group(2, "tries = 2", "angle-min = \"20\"", "angle-max = \"70\""));
    assertThat(bench.hit("TW-1", "40 N.m", "15", "").judged().effect()).isEqualTo(Effect.AGAIN);
    assertThat(bench.hit("TW-9", "50 N.m", "10", "").judged().objections())
        .as("in its band, but from a wrench nobody knows: not a failed pull")
        .isNotEmpty();
    Entry.TorqueTaken last = bench.hit("TW-1", "50 N.m", "1", "");
    assertThat(last.judged().verdict()).contains(Verdict.ANGLE_LOW);
    assertThat(last.judged().effect()).isEqualTo(Effect.NONCONFORMING);
    assertThat(last.judged().text())
        .isEqualTo(
            "a/1 (final pass): 16 degrees over all pulls is too little for 20 to 70 degrees."
                + " That was the last try allowed."
                + " Nonconforming: stop here, somebody must decide (dispose)."
                + " It was the one fastener due next.");
    dispose(bench, "a/1", Disposition.REWORK);
    assertThat(bench.hit("TW-1", "40 N.m", "15", "").judged().effect())
        .as("counted anew after the disposition")
        .isEqualTo(Effect.AGAIN);
    bench.loosen("a/1");
    assertThat(bench.hit("TW-1", "40 N.m", "15", "").judged().effect())
        .as("loosening is no new beginning")
        .isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void triesAreCountedForEachPassAndFastener() {
    String two =
        "tries = 2\n[[step.pass]]\nname = \"snug\"\ntorque = \"25 N.m\"\ntolerance = \"20 %\"\n"
            + "[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"10 %\"";
    Bench bench = Bench.on(Bench.group(1, two));
    for (String torque : new String[] {"19 N.m", "25 N.m", "40 N.m", "50 N.m"}) {
      assertThat(bench.hit(torque).judged().effect()).isNotEqualTo(Effect.NONCONFORMING);
    }
    assertThat(bench.job().complete()).isTrue();
    assertThat(bench.hitOn("a/1", "40 N.m").judged().effect()).isEqualTo(Effect.AGAIN);
    assertThat(bench.hit("40 N.m").judged().effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void withoutALimitAFastenerMayBeTriedForEver() {
    Bench bench = Bench.on(Bench.group(1, "criticality = \"danger\""));
    for (int i = 0; i < 30; i++) {
      assertThat(bench.hit("40 N.m").judged().effect()).isEqualTo(Effect.AGAIN);
    }
  }

  @Test
  void whatIsUsedUpIsConfirmedAgainForTheLoosenedFastenerOnly() {
    Bench bench =
        Bench.on(
            Bench.head()
                + LOCKER
                + Bench.step("a", 2, "after = [\"locker\"]")
                + Bench.step("b", 1, "after = [\"locker\"]"));
    attest(bench, "locker");
    for (int i = 0; i < 3; i++) {
      bench.hitOn(i < 2 ? "a/" + (i + 1) : "b/1", "50 N.m");
    }
    assertThat(bench.loosen("a/1").judged().undoes()).containsExactly("locker");
    assertThat(bench.job().condition(2).done()).as("b/1 was not loosened").isEqualTo(1);
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.JOB_WAITS);
    attest(bench, "locker");
    assertThat(bench.hit("50 N.m").judged().fastener()).contains("a/1");
    assertThat(bench.job().complete()).isTrue();
    bench.hitOn("b/1", "60 N.m");
    dispose(bench, "b/1", Disposition.REPLACE);
    Entry.Disposed replaced = (Entry.Disposed) bench.log().get(bench.log().size() - 1);
    assertThat(replaced.undoes()).containsExactly("locker");
  }

  @Test
  void whatIsUsedUpElsewhereOrEarlierIsNotConfirmedAgain() {
    Bench bench =
        Bench.on(
            Bench.head()
                + LOCKER
                + Bench.step("a", 1, "after = [\"locker\"]")
                + Bench.step("b", 1, "after = [\"a\"]")
                + LOCKER.replace("locker", "washer").replace("renew = true\n", "")
                + Bench.step("c", 1));
    attest(bench, "locker");
    bench.hit("50 N.m");
    bench.hit("50 N.m");
    attest(bench, "washer");
    bench.hit("50 N.m");
    assertThat(bench.loosen("b/1").judged().undoes()).as("locker is a's").isEmpty();
    assertThat(bench.loosen("c/1").judged().undoes()).as("washer is not renewed").isEmpty();
    assertThat(bench.loosen("a/1").judged().undoes()).containsExactly("locker");
  }

  @Test
  void aConfirmationInMereSequenceIsRenewed() {
    Bench bench = Bench.on(Bench.head() + LOCKER + Bench.step("a", 1));
    attest(bench, "locker");
    bench.hit("50 N.m");
    assertThat(bench.loosen("").judged().undoes()).containsExactly("locker");
  }

  /** The pivot's final pass waits for the cross-member, which waits for the pivot's snug pass. */
  @Test
  void aPassOfTheLoosenedStepThatDependsOnWhatIsUndoneIsUndoneToo() {
    String snug = "[[step.pass]]\nname = \"snug\"\ntorque = \"25 N.m\"\ntolerance = \"20 %\"\n";
    String last = "[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"10 %\"\n";
    Bench bench =
        Bench.on(
            Bench.group(2, snug + last + "after = [\"cross\"]")
                + Bench.step("cross", 1, "after = [\"a:snug\"]"));
    for (String torque : new String[] {"25 N.m", "25 N.m", "50 N.m", "50 N.m", "50 N.m"}) {
      assertThat(bench.hit(torque).judged().effect()).isEqualTo(Effect.CREDITED);
    }
    assertThat(bench.job().complete()).isTrue();
    assertThat(bench.loosen("a/1").judged().undoes()).containsExactly("a:final", "cross:final");
    assertThat(bench.job().condition(1).done()).as("a/2: snug stands, final does not").isEqualTo(1);
    for (String torque : new String[] {"25 N.m", "50 N.m", "50 N.m", "50 N.m"}) {
      assertThat(bench.hit(torque).judged().effect()).isEqualTo(Effect.CREDITED);
    }
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aSuspendedJobKeepsWhatItWaitsFor() {
    Bench bench = Bench.on(Bench.group(1, "single-use = true"));
    bench.hit("50 N.m");
    bench.loosen("a/1");
    bench.person(new SuspendJob(bench.jobName(), Optional.empty(), Optional.empty()));
    dispose(bench, "a/1", Disposition.REPLACE);
    assertThat(bench.job().condition(0).rework()).isTrue();
  }
}
