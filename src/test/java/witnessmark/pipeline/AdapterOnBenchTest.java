package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.job.Due;
import witnessmark.torque.Torque;
import witnessmark.torque.Verdict;

/** Adapters in the real pipeline: bands are at the fastener, readings at the drive. */
class AdapterOnBenchTest {
  private static String adapter(String lever, String offset, String angle) {
    return "adapter = { lever = \""
        + lever
        + "\", offset = \""
        + offset
        + "\", angle = \""
        + angle
        + "\" }";
  }

  private static Verdict verdict(String adapter, String reading) {
    return Bench.on(Bench.group(1, adapter)).hit(reading).judged().verdict().orElseThrow();
  }

  /**
   * 45 to 55 N.m at the fastener; factors 1.25, 1, 0.75 and, at 60 and 120 degrees, 1.125, 0.875.
   */
  @ParameterizedTest
  @CsvSource({
    "0,   35.9999999 N.m, UNDER_TORQUE",
    "0,   36 N.m,         IN_BAND",
    "0,   44 N.m,         IN_BAND",
    "0,   44.0000001 N.m, OVER_TORQUE",
    "90,  45 N.m,         IN_BAND",
    "90,  44.9999999 N.m, UNDER_TORQUE",
    "90,  55 N.m,         IN_BAND",
    "90,  55.0000001 N.m, OVER_TORQUE",
    "180, 60 N.m,         IN_BAND",
    "180, 59.9999999 N.m, UNDER_TORQUE",
    "60,  40 N.m,         IN_BAND",
    "60,  39.9999999 N.m, UNDER_TORQUE",
    "120, 56 N.m,         IN_BAND",
    "120, 51.4 N.m,       UNDER_TORQUE",
  })
  void aLimitIsIncludedExactlyWhateverTheLever(String angle, String reading, Verdict verdict) {
    assertThat(verdict(adapter("400 mm", "100 mm", angle), reading)).isEqualTo(verdict);
  }

  @Test
  void bothTorquesAreOnRecord() {
    Bench bench = Bench.on(Bench.group(1, adapter("350 mm", "40 mm", "0")));
    Entry.TorqueTaken taken = bench.hit("45.0 N.m");
    assertThat(taken.event().torque()).isEqualTo(Torque.parse("45.0 N.m"));
    assertThat(taken.judged().atFastener()).contains("50.1428571 N.m");
    assertThat(taken.judged().text())
        .isEqualTo(
            "a/1 (final pass): 45.0 N.m (50.1428571 N.m at the fastener) is in the band of"
                + " 45 to 55 N.m. Credited. It was the one fastener due next.");
    Entry.TorqueTaken loosened = bench.loosen("a/1");
    assertThat(loosened.judged().text())
        .startsWith("a/1 (final pass): loosened with 30 N.m (33.4285714 N.m at the fastener). ");
  }

  @Test
  void withoutAnAdapterTheReadingIsAllThereIs() {
    assertThat(Bench.on(Bench.group(1)).hit("50 N.m").judged().atFastener()).isEmpty();
  }

  @Test
  void theTechnicianIsToldWhatToPullTo() {
    Bench bench =
        Bench.on(Bench.group(1, adapter("350 mm", "40 mm", "0"), "wrenches = [\"TW-1\"]"));
    assertThat(Due.of(bench.job()).text())
        .isEqualTo(
            "Next: a/1, final pass, 50 N.m (45 to 55 N.m), through the adapter: pull to"
                + " 44.872 N.m, with TW-1.");
  }

  @Test
  void theRangeOfAWrenchIsThatOfItsReading() {
    // 189 to 231 N.m at the fastener, twice what a wrench of 20 to 100 N.m reads
    String pass = "\n[[step.pass]]\nname = \"final\"\ntorque = \"210 N.m\"\ntolerance = \"10 %\"";
    String twice = adapter("300 mm", "300 mm", "0") + pass;
    assertThat(Bench.on(Bench.group(1, twice)).hit("99 N.m").judged().objections()).isEmpty();
    assertThat(Bench.on(Bench.group(1, twice)).hit("101 N.m").judged().objections())
        .containsExactly(Objection.OUTSIDE_WRENCH_RANGE);
  }

  @Test
  void aReadingIsPlacedByTheTorqueAtTheFastener() {
    // open together: 45 to 55 N.m behind an adapter of 1.5, and 45 to 55 N.m directly
    Bench bench =
        Bench.on(
            Bench.group(1, adapter("300 mm", "150 mm", "0")) + Bench.step("b", 1, "after = []"));
    Judged small = bench.hit("33 N.m").judged();
    assertThat(small.reason()).isEqualTo(Reason.ONLY_BAND_THAT_FITS);
    assertThat(small.fastener()).contains("a/1");
    assertThat(small.effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void theUncertaintyIsTheSameShareBehindTheAdapter() {
    // factor 1.25; 2 % of 45.9 is 0.918, so 45.918... is the least accepted and 36.734... its
    // reading
    Bench bench =
        Bench.on(Bench.group(1, "acceptance = \"guarded\"", adapter("400 mm", "100 mm", "0")));
    bench.person(Bench.wrench("TW-1", "2"));
    Judged near = bench.hit("36.7 N.m").judged();
    assertThat(near.verdict()).contains(Verdict.UNDECIDED);
    assertThat(near.guard()).contains("0.9175 N.m");
    assertThat(bench.hit("36.74 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
  }
}
