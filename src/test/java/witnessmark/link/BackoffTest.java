package witnessmark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BackoffTest {
  private static final Duration FIRST = Duration.ofMillis(250);
  private static final Duration LONGEST = Duration.ofSeconds(30);

  @Test
  void waitsDoubleAfterEachFailureUpToTheLongestAndNeverLessThanHalfOfIt() {
    for (int seed = 0; seed < 200; seed++) {
      Backoff backoff = new Backoff(FIRST, LONGEST, new Random(seed));
      long[] whole = {250, 500, 1000, 2000, 4000, 8000, 16000, 30000, 30000, 30000};
      for (long millis : whole) {
        assertThat(backoff.next())
            .as("seed %d, wait of %d ms", seed, millis)
            .isBetween(Duration.ofMillis(millis / 2), Duration.ofMillis(millis));
      }
    }
  }

  @Test
  void twoLinksDoNotWaitTheSameTime() {
    assertThat(new Backoff(FIRST, LONGEST, new Random(1)).next())
        .isNotEqualTo(new Backoff(FIRST, LONGEST, new Random(2)).next());
  }

  @Test
  void beginsAgainAfterASuccess() {
    Backoff backoff = new Backoff(FIRST, LONGEST, new Random(3));
    for (int i = 0; i < 20; i++) {
      backoff.next();
    }
    backoff.reset();
    assertThat(backoff.next()).isBetween(FIRST.dividedBy(2), FIRST);
  }

  @Test
  void refusesTimesThatDoNotGrow() {
    assertThatThrownBy(() -> new Backoff(LONGEST, FIRST, new Random(4)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a backoff needs 0 < first <= longest, found PT30S and PT0.25S");
  }
}
