package witnessmark.docs;

import witnessmark.desk.Attest;
import witnessmark.entry.Effect;
import witnessmark.pipeline.Bench;

/** A small job by an invented procedure, as far as the samples of sentences need it. */
final class RearAxle {
  static final String TEXT =
      """
      [procedure]
      id = "RAM-210"
      revision = "C"
      title = "Rear-axle module"
      unit-pattern = "ATR-26-[0-9]{4}"

      [[step]]
      id = "frame-check"
      kind = "attest"
      title = "Frame"
      statement = "The frame's seats are clean and free of paint."

      [[step]]
      id = "carrier-left"
      kind = "tighten"
      title = "Axle carrier, left"
      fasteners = 4
      order = "pattern"
      pattern = [1, 3, 2, 4]
      torque = "33 N.m"
      tolerance = "10 %"

      [[step]]
      id = "carrier-right"
      kind = "tighten"
      title = "Axle carrier, right"
      fasteners = 4
      torque = "33 N.m"
      tolerance = "10 %"
      after = ["frame-check"]

      [[step]]
      id = "gap"
      kind = "measure"
      title = "Gap"
      labels = ["left", "right"]
      unit = "mm"
      min = "3.0"
      max = "5.0"
      after = ["carrier-left", "carrier-right"]

      [[step]]
      id = "hand-over"
      kind = "attest"
      title = "Hand-over"
      statement = "Every bolt head carries its paint mark."
      """;

  private RearAxle() {}

  /** The job J-6 on ATR-26-0147, just opened; the wrench TW-0417 is enrolled. */
  static Bench bench() {
    return bench(TEXT);
  }

  /** The same, with its frame checked, where a bolt of the left carrier is dangerous. */
  static Bench dangerous() {
    Bench bench =
        bench(
            TEXT.replace(
                "pattern = [1, 3, 2, 4]\n", "pattern = [1, 3, 2, 4]\ncriticality = \"danger\"\n"));
    bench.person(new Attest("J-6", "frame-check", "badge-07"));
    return bench;
  }

  private static Bench bench(String procedure) {
    Bench bench = Bench.without(procedure);
    bench.person(Bench.wrench("TW-0417"));
    bench.open("ATR-26-0147");
    return bench;
  }

  /** The same with its frame checked. */
  static Bench atWork() {
    Bench bench = bench();
    bench.person(new Attest("J-6", "frame-check", "badge-07"));
    return bench;
  }

  /** The same after a reading that could be on either carrier. */
  static Bench asked() {
    Bench bench = atWork();
    if (bench.hit("TW-0417", "33 N.m", "", "").judged().effect() != Effect.ASKS) {
      throw new IllegalStateException("the reading was to ask");
    }
    return bench;
  }
}
