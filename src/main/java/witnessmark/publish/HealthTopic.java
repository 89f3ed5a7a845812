package witnessmark.publish;

import java.time.Duration;
import java.util.function.Supplier;
import witnessmark.link.Outlet;

/** Tells an outlet how the bridge is, retained: every so often, and at once when it changes. */
final class HealthTopic {
  private final String topic;
  private final Supplier<HealthNow> health;
  private final Duration every;
  private String told = "";
  private long toldAt;

  HealthTopic(String topic, Supplier<HealthNow> health, Duration every) {
    this.topic = topic;
    this.health = health;
    this.every = every;
  }

  /** What the outlet retains is unknown now. */
  void forget() {
    told = "";
  }

  void tell(Outlet outlet) {
    HealthNow now = health.get();
    boolean due = System.nanoTime() - toldAt >= every.toNanos();
    if ((due || !now.key().equals(told)) && outlet.publish(topic, now.message(), true)) {
      toldAt = System.nanoTime();
      told = now.key();
    }
  }
}
