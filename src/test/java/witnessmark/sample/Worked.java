package witnessmark.sample;

import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import witnessmark.desk.CloseJob;
import witnessmark.pipeline.Bench;

/** Shops in which many jobs were worked, by a seed. */
public final class Worked {
  private static final long SEED = 20_261_126;

  private Worked() {}

  /**
   * Jobs of four fasteners at 50 N.m ± 10 %, until there are so many values.
   *
   * @param shift added to the mean at each value, in newton metres
   * @param s the spread, in newton metres
   */
  public static Bench jobs(int values, double s, IntToDoubleFunction shift, String... lines) {
    Random random = new Random(SEED);
    Bench bench = Bench.without(Bench.group(4, lines));
    for (int i = 0; i < values; i++) {
      if (i % 4 == 0) {
        if (i > 0) {
          bench.person(new CloseJob(bench.jobName(), Optional.of("badge-07")));
        }
        bench.open(String.format(Locale.ROOT, "ATR-26-%04d", 100 + i / 4));
      }
      double torque = 50 + shift.applyAsDouble(i) + s * random.nextGaussian();
      bench.hit(String.format(Locale.ROOT, "%.2f N.m", torque));
    }
    return bench;
  }
}
