package witnessmark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class StandingTest {
  private Instant now = Instant.parse("2026-11-25T10:00:00Z");
  private final Standing standing = new Standing("bench-1", () -> now);

  @Test
  void waitsBeforeItIsStarted() {
    assertThat(standing.status())
        .isEqualTo(new LinkStatus("bench-1", LinkState.WAITING, "not started", now));
  }

  @Test
  void countsSinceFromTheMomentItCeasedToBeUpThroughAllAttempts() {
    standing.become(LinkState.UP, "connected");
    Instant down = now = now.plusSeconds(60);
    standing.become(LinkState.WAITING, "lost");
    now = now.plusSeconds(5);
    standing.become(LinkState.CONNECTING, "trying again");
    now = now.plusSeconds(5);
    standing.become(LinkState.WAITING, "nothing answers");
    assertThat(standing.status())
        .isEqualTo(new LinkStatus("bench-1", LinkState.WAITING, "nothing answers", down));
    Instant up = now = now.plusSeconds(5);
    standing.become(LinkState.UP, "connected");
    assertThat(standing.status().since()).isEqualTo(up);
  }

  @Test
  void staysClosed() {
    standing.become(LinkState.CLOSED, "closed");
    standing.become(LinkState.UP, "connected");
    assertThat(standing.status().state()).isEqualTo(LinkState.CLOSED);
    assertThat(standing.status().detail()).isEqualTo("closed");
  }
}
