package wrenchsim.line;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class OutboxTest {
  private static final byte[] ONE = "one".getBytes(US_ASCII);
  private static final byte[] TWO = "two".getBytes(US_ASCII);

  @Test
  void aFrameGoesOutAgainTwoSecondsAfterItWasLastSentUntilItIsAnswered() {
    Outbox outbox = new Outbox();
    outbox.sent(1, ONE, 0);
    outbox.sent(2, TWO, 500);
    assertThat(outbox.due(1_999)).isEmpty();
    assertThat(outbox.due(2_000)).containsExactly(ONE);
    assertThat(outbox.due(2_500)).containsExactly(TWO);
    assertThat(outbox.answered(2)).isTrue();
    assertThat(outbox.due(10_000)).containsExactly(ONE);
    assertThat(outbox.answered(1)).isTrue();
    assertThat(outbox.due(20_000)).isEmpty();
    assertThat(outbox.size()).isZero();
  }

  @Test
  void anAnswerForAnotherNumberForgetsNothing() {
    Outbox outbox = new Outbox();
    outbox.sent(1, ONE, 0);
    assertThat(outbox.answered(2)).isFalse();
    assertThat(outbox.size()).isEqualTo(1);
  }

  @Test
  void anyChunkingGivesTheSameLinesAndNoiseDoesNotLast() {
    byte[] bytes =
        ("A|TW-0417|1|in-band\r\n\r\n" + "x".repeat(300) + "\nN|refused\r\nA|TW")
            .getBytes(US_ASCII);
    for (int size = 1; size <= bytes.length; size++) {
      List<String> lines = new ArrayList<>();
      AnswerReader reader = new AnswerReader();
      for (int from = 0; from < bytes.length; from += size) {
        int count = Math.min(size, bytes.length - from);
        byte[] chunk = java.util.Arrays.copyOfRange(bytes, from, from + count);
        reader.take(chunk, count, lines::add);
      }
      assertThat(lines)
          .as("chunks of %d", size)
          .containsExactly("A|TW-0417|1|in-band", "N|refused");
    }
  }
}
