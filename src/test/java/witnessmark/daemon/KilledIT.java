package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Subscriber;
import witnessmark.bench.Workshop;

/**
 * Kill -9 at random moments while events arrive loses nothing, doubles nothing and changes nothing.
 */
class KilledIT {
  private static final int EVENTS = 2000;
  private static final int KILLS = 20;

  /** Events that may go out in one life of the daemon: all kills are over before the last does. */
  private static final int STRETCH = 95;

  private static final Duration LONG = Duration.ofSeconds(60);

  private static final String PROCEDURE =
      """
      [procedure]
      id = "RAIL-1"
      revision = "A"
      title = "A rail with many bolts"

      [[step]]
      id = "rail"
      kind = "tighten"
      title = "Rail"
      fasteners = 500
      """
          + Stream.of("seat 25", "snug 45", "half 65", "final 85")
              .map(p -> p.split(" "))
              .map(
                  p ->
                      "[[step.pass]]\nname = \"%s\"\ntorque = \"%s N.m\"\ntolerance = \"4 N.m\"\n"
                          .formatted(p[0], p[1]))
              .collect(Collectors.joining());

  @TempDir Path killed;
  @TempDir Path undisturbed;

  @Test
  void everyEventIsRecordedExactlyOnceAndTheJobStandsAsWithoutKills() throws Exception {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    System.out.println("KilledIT seed " + seed);
    Workshop shop = Workshop.furnished(killed);
    shop.release("rail.toml", PROCEDURE);
    assertThat(shop.open("RAIL-1", "ATR-26-0147", "bench-1")).isEqualTo("J-6");
    copyData();
    try (Mosquitto broker = broker(killed);
        Subscriber verdicts = Subscriber.to(broker, "listener", "witnessmark/v1/+/verdict");
        Source source = new Source(broker, events(), 5)) {
      // The broker keeps events for the bridge from its first subscription on.
      try (DaemonProcess first = shop.on(broker).daemon(broker)) {
        first.kill();
      }
      int beforeTheLast = 0;
      int amidTheFlow = 0;
      for (int kill = 1; kill <= KILLS; kill++) {
        try (DaemonProcess daemon = shop.daemon().awaitUp("broker")) {
          long before = recorded(shop);
          source.allow(kill * STRETCH);
          TimeUnit.MILLISECONDS.sleep(random.nextInt(600));
          long after = recorded(shop);
          int sent = source.sent();
          daemon.kill();
          beforeTheLast += after < EVENTS ? 1 : 0;
          amidTheFlow += after > before && (after < sent || sent < kill * STRETCH) ? 1 : 0;
        }
      }
      assertThat(beforeTheLast).as("kills before the last event, seed " + seed).isEqualTo(KILLS);
      assertThat(amidTheFlow).as("kills amid the flow, seed " + seed).isGreaterThanOrEqualTo(10);
      try (DaemonProcess daemon = shop.daemon().awaitUp("broker")) {
        source.allow(EVENTS);
        await("every event on record, seed " + seed)
            .atMost(LONG)
            .until(() -> recorded(shop) >= EVENTS);
        await("every verdict told, seed " + seed)
            .atMost(LONG)
            .pollInterval(Duration.ofMillis(500))
            .until(() -> told(verdicts).size() >= EVENTS);
        assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
      }
      List<String> ids = shop.ledger().run("SELECT n FROM trace WHERE kind = 'torque';");
      assertThat(told(verdicts).keySet()).containsExactlyInAnyOrderElementsOf(ids);
    }
    assertThat(shop.ledger().run("SELECT number FROM trace WHERE kind = 'torque' ORDER BY n;"))
        .as("seed " + seed)
        .isEqualTo(IntStream.rangeClosed(1, EVENTS).mapToObj(String::valueOf).toList());
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 2007 entries");

    Workshop calm = calmRun();
    assertThat(outcomes(shop)).as("seed " + seed).isEqualTo(outcomes(calm));
    assertThat(standing(shop)).as("seed " + seed).isEqualTo(standing(calm));
    assertThat(standing(shop))
        // 1 790 credited, less three of the fastener that is nonconforming in its last pass
        .contains("1787 of 2000 fastener passes done")
        .contains("nonconforming since entry 1996");
  }

  private Workshop calmRun() throws Exception {
    Workshop calm = Workshop.in(undisturbed);
    try (Mosquitto broker = broker(undisturbed);
        DaemonProcess daemon = calm.on(broker).daemon(broker);
        Source source = new Source(broker, events(), 0)) {
      source.allow(EVENTS);
      await().atMost(LONG).until(() -> recorded(calm) >= EVENTS);
      daemon.stop();
    }
    return calm;
  }

  private static Mosquitto broker(Path directory) {
    return Mosquitto.start(directory, "autosave_on_changes false", "autosave_interval 3600");
  }

  private void copyData() throws IOException {
    Path to = Files.createDirectory(undisturbed.resolve("witnessmark-data"));
    try (Stream<Path> files = Files.list(killed.resolve("witnessmark-data"))) {
      for (Path file : files.toList()) {
        Files.copy(file, to.resolve(file.getFileName()));
      }
    }
  }

  /** One bolt after the other, pass by pass; every tenth pull is too weak, one is too strong. */
  private static List<String> events() {
    List<String> events = new ArrayList<>();
    int credited = 0;
    for (int i = 1; i <= EVENTS; i++) {
      int target = 25 + 20 * (credited / 500);
      boolean weak = i % 10 == 7;
      double torque = weak ? target - 5 : i == 1990 ? 95 : target + i % 7 - 3;
      credited += weak ? 0 : 1;
      events.add(
          "{\"wrench\":\"TW-0417\",\"event\":%d,\"torque\":\"%s\",\"unit\":\"N.m\"}"
              .formatted(i, torque));
    }
    return events;
  }

  /**
   * Asked while the daemon lives: were it dead, the shell would be the last to close the file and
   * would tidy up after it.
   */
  private static long recorded(Workshop shop) {
    return shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'torque';");
  }

  /** The verdicts heard, by id; what was told twice was told alike. */
  private static Map<String, String> told(Subscriber verdicts) {
    return verdicts.documents().stream()
        .collect(
            Collectors.toMap(
                d -> d.path("id").asText(),
                d -> d.toString(),
                (one, other) -> {
                  assertThat(other).isEqualTo(one);
                  return one;
                }));
  }

  private static List<String> outcomes(Workshop shop) {
    return shop.ledger()
        .run("SELECT n, number, fastener, verdict, effect FROM trace WHERE kind = 'torque';");
  }

  private static String standing(Workshop shop) {
    return shop.attempt("job", "status", "J-6", "--json").out()
        + shop.attempt("job", "status", "J-6").out();
  }
}
