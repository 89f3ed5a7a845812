package witnessmark.trial;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * The trial in its short form; the long one is a command of its own (see docs/shop-floor-trial.md).
 */
class ShopFloorTest {
  @Test
  void twoThousandJobsReachEveryGoal() throws Exception {
    assertThat(Goals.missed(ShopFloor.run(2_000, 1))).isEmpty();
  }
}
