package witnessmark.publish;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import witnessmark.ledger.Reading;
import witnessmark.link.Outlet;

/**
 * Tells an outlet the newest checkpoint, retained and as it is signed, at most every so often: what
 * others have seen the owner of the disk cannot rewrite unseen.
 */
final class CheckpointTopic {
  private final String topic;
  private final Duration every;
  private String told = "";
  private long toldAt;

  /**
   * @param every at least so long between two
   */
  CheckpointTopic(String topic, Duration every) {
    this.topic = topic;
    this.every = every;
  }

  /** What the outlet retains is unknown now. */
  void forget() {
    told = "";
  }

  /** Tells it where the time has come and there is a newer one. */
  void tell(Reading reading, Outlet outlet) {
    if (told.isEmpty() || System.nanoTime() - toldAt >= every.toNanos()) {
      tellNow(reading, outlet);
    }
  }

  /** Tells it where there is a newer one. */
  void tellNow(Reading reading, Outlet outlet) {
    Optional<String> note = reading.checkpoint().filter(n -> !n.equals(told));
    if (note.isPresent()
        && outlet.publish(topic, note.get().getBytes(StandardCharsets.UTF_8), true)) {
      told = note.get();
      toldAt = System.nanoTime();
    }
  }
}
