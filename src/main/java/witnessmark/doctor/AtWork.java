package witnessmark.doctor;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** What the bridge at work says of itself, and whether that is the bridge of this configuration. */
final class AtWork {
  static final String AREA = "bridge";

  /** A process is there before its bridge says since when it is; a clock may be set in between. */
  private static final Duration SLACK = Duration.ofSeconds(60);

  private final String name;
  private final OptionalLong daemon;
  private final Optional<Health> served;
  private final Map<String, Health> retained;
  private final List<Finding> found = new ArrayList<>();

  /**
   * @param name the bridge's name
   * @param daemon the process of the daemon at work
   * @param served what it says over HTTP
   * @param retained what brokers retain of a bridge of that name, by the area of the broker
   */
  AtWork(String name, OptionalLong daemon, Optional<Health> served, Map<String, Health> retained) {
    this.name = name;
    this.daemon = daemon;
    this.served = served;
    this.retained = retained;
  }

  List<Finding> look() {
    retained.forEach(this::whose);
    if (daemon.isPresent()) {
      served
          .or(() -> retained.values().stream().filter(this::ours).findFirst())
          .ifPresent(this::says);
    }
    return found;
  }

  /** The daemon that answers over HTTP is surely ours; else the process's own age has to do. */
  private boolean ours(Health health) {
    if (served.isPresent()) {
      return served.get().since().equals(health.since());
    }
    Optional<Instant> started =
        ProcessHandle.of(daemon.orElse(-1)).flatMap(p -> p.info().startInstant());
    try {
      Instant since = Instant.parse(health.since());
      return started.isEmpty() || Duration.between(started.get(), since).abs().compareTo(SLACK) < 0;
    } catch (DateTimeParseException e) {
      return true; // it cannot be told
    }
  }

  private void whose(String area, Health health) {
    String apart =
        "Give each bridge a name of its own in [bridge]. If there is no other any more, take away"
            + " what is retained of it: "
            + Brokers.clear(name);
    if (daemon.isEmpty()) {
      found.add(
          Finding.warn(
              area,
              "A bridge \""
                  + name
                  + "\" says there that it is at work since "
                  + health.since()
                  + ", though no daemon works on this data directory: another bridge of the same"
                  + " name, or what is left of one.",
              apart));
    } else if (!ours(health)) {
      found.add(
          Finding.bad(
              area,
              "Another bridge of the name \""
                  + name
                  + "\", at work since "
                  + health.since()
                  + ", tells its health there in place of this one's.",
              apart));
    }
  }

  private void says(Health health) {
    if (health.degraded()) {
      found.add(
          Finding.warn(
              AREA,
              "The running bridge says it is degraded: " + health.reason(),
              "Mend what it names; it then goes on by itself."));
    } else {
      found.add(Finding.good(AREA, "The running bridge says that all is well with it."));
    }
    if (health.waiting() > 0) {
      found.add(
          Finding.warn(
              AREA,
              counted(health.waiting()) + " heard and not on record yet.",
              "Look again in a minute. If they do not become fewer, its log says what is in the way:"
                  + " journalctl -u witnessmark"));
    }
    if (health.notKept() > 0) {
      found.add(
          Finding.warn(
              AREA,
              counted(health.notKept())
                  + " heard since "
                  + health.since()
                  + " and lost: there was no room for them, and nobody sends them again.",
              "See from where and when, and take those readings anew: witnessmark trace --kind"
                  + " not-kept"));
    }
  }

  private static String counted(long n) {
    return n + (n == 1 ? " message was" : " messages were");
  }
}
