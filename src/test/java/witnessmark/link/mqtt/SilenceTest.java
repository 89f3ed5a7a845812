package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class SilenceTest {
  private final Silence silence = new Silence(Duration.ofSeconds(5));

  private boolean at(long seconds, boolean answered) {
    return silence.tooLong(answered, TimeUnit.SECONDS.toNanos(seconds));
  }

  @Test
  void silenceIsTooLongAfterTheLimitCountedFromTheFirstQuestion() {
    assertThat(at(5, false)).isFalse(); // asked at 0
    assertThat(at(10, false)).isFalse();
    assertThat(at(15, false)).isFalse();
    assertThat(at(16, false)).isTrue();
  }

  @Test
  void anAnswerBreaksIt() {
    assertThat(at(-90, false)).isFalse();
    assertThat(at(-80, true)).isFalse();
    assertThat(at(-70, false)).isFalse();
    assertThat(at(-61, false)).isFalse();
    assertThat(at(-59, false)).isTrue();
  }
}
