package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import witnessmark.pipeline.Refusals.Line;

class RefusalsTest {
  /** Where a nano clock begins is anybody's guess; here it runs over within the test. */
  private static final long START = Long.MAX_VALUE - TimeUnit.MILLISECONDS.toNanos(1500);

  private final Refusals refusals = new Refusals();

  private static long at(long millis) {
    return START + TimeUnit.MILLISECONDS.toNanos(millis);
  }

  @Test
  void ofEachSourceOneASecondIsToldWithTheNumberLeftOut() {
    assertThat(refusals.refused("a", "first", at(0))).contains(new Line("a", "first", 0));
    assertThat(refusals.refused("b", "other", at(1))).contains(new Line("b", "other", 0));
    assertThat(refusals.refused("a", "second", at(10))).isEmpty();
    assertThat(refusals.refused("a", "third", at(999))).isEmpty();
    assertThat(refusals.refused("a", "fourth", at(1000))).contains(new Line("a", "fourth", 2));
    assertThat(refusals.refused("a", "fifth", at(1999))).isEmpty();
    assertThat(refusals.refused("a", "sixth", at(2000))).contains(new Line("a", "sixth", 1));
  }

  @Test
  void theLastOfThemIsToldThoughNothingMoreComes() {
    refusals.refused("a", "first", at(0));
    refusals.refused("a", "second", at(10));
    refusals.refused("a", "third", at(20));
    assertThat(refusals.overdue(at(999))).isEmpty();
    assertThat(refusals.overdue(at(1000))).containsExactly(new Line("a", "third", 1));
    assertThat(refusals.overdue(at(9000))).isEmpty();
    assertThat(refusals.refused("a", "fourth", at(1500))).isEmpty();
  }

  @Test
  void sourcesAreForgottenInTheOrderTheyWereHeard() {
    for (int i = 0; i < Refusals.SOURCES; i++) {
      refusals.refused("s" + i, "x", at(0));
    }
    assertThat(refusals.refused("s0", "x", at(1))).as("still known").isEmpty();
    refusals.refused("one more", "x", at(2));
    assertThat(refusals.refused("s0", "x", at(3))).as("heard since").isEmpty();
    assertThat(refusals.refused("s1", "x", at(3))).as("forgotten").isPresent();
  }
}
