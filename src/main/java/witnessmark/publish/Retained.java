package witnessmark.publish;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.job.JobState;
import witnessmark.link.Outlet;

/**
 * What the outlet keeps for those who come later: how the bridge is, and what each station waits
 * for. Told again only when it changed.
 */
final class Retained {
  private final String bridge;
  private final Outlet outlet;
  private final Duration healthEvery;
  private final Map<String, String> told = new HashMap<>();
  private String healthTold = "";
  private long healthAt;

  /**
   * @param healthEvery after which time health is told again unchanged
   */
  Retained(String bridge, Outlet outlet, Duration healthEvery) {
    this.bridge = bridge;
    this.outlet = outlet;
    this.healthEvery = healthEvery;
  }

  /** What the outlet keeps is unknown now, as after it lost its store. */
  void forget() {
    told.clear();
    healthTold = "";
  }

  /** Stations that something was told of. */
  Set<String> stations() {
    return Set.copyOf(told.keySet());
  }

  void expect(String station, Optional<JobState> job) {
    expect(station, ExpectMessage.of(station, job));
  }

  void notRecording(String station, String why) {
    expect(station, ExpectMessage.notRecording(station, why));
  }

  private void expect(String station, byte[] message) {
    String text = new String(message, StandardCharsets.UTF_8);
    if (!text.equals(told.get(station))
        && outlet.publish(topic(station, "expect"), message, true)) {
      told.put(station, text);
    }
  }

  void health(HealthNow now) {
    boolean due = System.nanoTime() - healthAt >= healthEvery.toNanos();
    if ((due || !now.key().equals(healthTold))
        && outlet.publish(topic(bridge, "health"), now.message(), true)) {
      healthAt = System.nanoTime();
      healthTold = now.key();
    }
  }

  /** After an orderly stop the broker publishes no last will, so what is retained is set here. */
  void gone() {
    String gone = "{\"bridge\":\"" + bridge + "\",\"state\":\"gone\"}";
    if (outlet.connected()) {
      outlet.publish(topic(bridge, "health"), gone.getBytes(StandardCharsets.UTF_8), true);
    }
  }

  static String topic(String level, String what) {
    return "witnessmark/v1/" + level + "/" + what;
  }
}
