package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Attest;
import witnessmark.desk.Measure;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.job.Due;
import witnessmark.torque.Digits;

class OrderTest {
  @Test
  void aStrictGroupIsCreditedInFileOrder() {
    Bench bench = Bench.on(Bench.group(3));
    assertThat(fasteners(bench, 3)).containsExactly("a/1", "a/2", "a/3");
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aPatternIsCreditedInItsOrder() {
    Bench bench = Bench.on(Bench.group(4, "order = \"pattern\"", "pattern = [1, 3, 2, 4]"));
    assertThat(fasteners(bench, 4)).containsExactly("a/1", "a/3", "a/2", "a/4");
  }

  @Test
  void inAnyOrderAReadingWithoutPositionIsCreditedByCountAndSaysSo() {
    Bench bench = Bench.on(Bench.group(3, "order = \"any\""));
    Entry.TorqueTaken named = bench.hitOn("a/2", "50 N.m");
    assertThat(named.judged().reason()).isEqualTo(Reason.NAMED_BY_EVENT);
    Entry.TorqueTaken counted = bench.hit("50 N.m");
    assertThat(counted.judged().reason()).isEqualTo(Reason.COUNTED_IN_GROUP);
    assertThat(counted.judged().fastener()).contains("a/1");
    Entry.TorqueTaken last = bench.hit("50 N.m");
    assertThat(last.judged().reason()).isEqualTo(Reason.NEXT_IN_SEQUENCE);
    assertThat(last.judged().fastener()).contains("a/3");
  }

  @Test
  void theWholeGroupDoesAPassBeforeTheNext() {
    Bench bench =
        Bench.on(
            Bench.group(
                2,
                "[[step.pass]]\nname = \"snug\"\ntorque = \"25 N.m\"\ntolerance = \"20 %\"",
                "[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"10 %\""));
    assertThat(passes(bench, "25 N.m", "25 N.m", "50 N.m", "50 N.m"))
        .containsExactly("a/1:snug", "a/2:snug", "a/1:final", "a/2:final");
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aFinalPassWaitsForAnotherGroup() {
    Bench bench =
        Bench.on(
            Bench.group(
                    1,
                    "[[step.pass]]\nname = \"snug\"\ntorque = \"25 N.m\"\ntolerance = \"20 %\"",
                    "[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"10 %\"",
                    "after = [\"b\"]")
                + Bench.step("b", 1, "after = [\"a:snug\"]"));
    assertThat(passes(bench, "25 N.m", "50 N.m", "50 N.m"))
        .containsExactly("a/1:snug", "b/1:final", "a/1:final");
  }

  @Test
  void aNamedFastenerThatIsNotDueIsRecordedAndNotCredited() {
    Bench bench = Bench.on(Bench.group(2));
    Entry.TorqueTaken early = bench.hitOn("a/2", "50 N.m");
    assertThat(early.judged().reason()).isEqualTo(Reason.NOT_DUE_YET);
    assertThat(early.judged().effect()).isEqualTo(Effect.NONE);
    assertThat(early.judged().verdict()).isEmpty();
    assertThat(bench.hit("50 N.m").judged().fastener()).contains("a/1");
  }

  @Test
  void gatesHoldBackWhatFollowsAndSayWhatIsAwaited() {
    String attest =
        "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\nstatement = \"The wire is fitted.\"\n";
    String measure =
        "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap\"\nlabels = [\"left\", \"right\"]\n"
            + "unit = \"mm\"\nmin = \"1\"\nmax = \"2\"\nspread = \"0.2\"\n";
    Bench bench = Bench.on(Bench.group(1) + attest + measure + Bench.step("b", 1));
    bench.hit("50 N.m");
    assertThat(Due.of(bench.job()).text()).isEqualTo("Confirm (attest wire): The wire is fitted.");
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.JOB_WAITS);
    bench.person(new Attest(bench.jobName(), "wire", "badge-07"));
    assertThat(Due.of(bench.job()).text())
        .isEqualTo("Measure (measure gap): left, right, 1 to 2 mm, differing by at most 0.2.");
    bench.person(measured(bench, "1.0", "1.3"));
    assertThat(Due.of(bench.job()).state()).isEqualTo(Due.State.MEASURE);
    bench.person(measured(bench, "1.0", "1.2"));
    assertThat(bench.hit("50 N.m").judged().fastener()).contains("b/1");
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void twoOpenGroupsAreToldApartByTheirBandsOrAPersonIsAsked() {
    Bench bench =
        Bench.on(
            Bench.group(1)
                + Bench.step(
                    "b",
                    2,
                    "after = []",
                    "[[step.pass]]\nname = \"final\"\ntorque = \"90 N.m\"\ntolerance = \"10 %\""));
    Entry.TorqueTaken fits = bench.hit("91 N.m");
    assertThat(fits.judged().reason()).isEqualTo(Reason.ONLY_BAND_THAT_FITS);
    assertThat(fits.judged().fastener()).contains("b/1");
    assertThat(fits.judged().alternatives()).containsExactly("a/1");
    Entry.TorqueTaken asks = bench.hit("70 N.m");
    assertThat(asks.judged().reason()).isEqualTo(Reason.SEVERAL_POSSIBLE);
    assertThat(asks.judged().effect()).isEqualTo(Effect.ASKS);
    assertThat(asks.judged().text())
        .isEqualTo(
            "It could be a/1, b/2. Say which (assign), or set the reading aside."
                + " The reading is 70 N.m. Nothing is credited.");
    assertThat(Due.of(bench.job()).state()).isEqualTo(Due.State.ANSWER);
  }

  @Test
  void twoOpenGroupsAreToldApartByTheWrenchesAllowed() {
    Bench bench =
        Bench.on(
            Bench.group(1, "wrenches = [\"TW-1\"]")
                + Bench.step("b", 1, "after = []", "wrenches = [\"TW-2\"]"));
    Entry.TorqueTaken second = bench.hit("TW-2", "50 N.m", "", "");
    assertThat(second.judged().reason()).isEqualTo(Reason.ONLY_PLACE_FOR_WRENCH);
    assertThat(second.judged().fastener()).contains("b/1");
  }

  private static Measure measured(Bench bench, String left, String right) {
    return new Measure(
        bench.jobName(), "gap", List.of(new Digits(left), new Digits(right)), "badge-07");
  }

  private static List<String> fasteners(Bench bench, int hits) {
    return java.util.stream.IntStream.range(0, hits)
        .mapToObj(i -> bench.hit("50 N.m").judged().fastener().orElseThrow())
        .toList();
  }

  private static List<String> passes(Bench bench, String... torques) {
    return java.util.Arrays.stream(torques)
        .map(t -> bench.hit(t).judged())
        .map(j -> j.fastener().orElseThrow() + ":" + j.pass().orElseThrow())
        .toList();
  }
}
