package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/** Who has the disk and the key rewrites the log; what others have seen of it tells. */
class HandedOutIT {
  private static final String TOPIC = "witnessmark/v1/shop-1/checkpoint";
  private static final Duration LONG = Duration.ofSeconds(40);

  @TempDir private Path directory;

  @Test
  void aLogRewrittenWithItsOwnKeyIsRevealedByTheCheckpointsThatOthersHave() throws Exception {
    Workshop shop = Workshop.furnished(directory);
    Path drop = Files.createDirectory(directory.resolve("outside"));
    try (Mosquitto broker = Mosquitto.start(directory)) {
      try (DaemonProcess daemon = shop.dropping(drop).on(broker).daemon(broker)) {
        broker.publish("witnessmark/v1/bench-1/torque", Readings.of(10));
        await().atMost(LONG).until(() -> retained(broker).startsWith("15\n"));
        await().atMost(LONG).until(() -> files(drop).contains("checkpoint-000000000015.txt"));
        broker.publish("witnessmark/v1/bench-1/scan", List.of("{\"scan\":\"wm:status\"}"));
        // An orderly stop hands out what came since, without waiting for its time.
        await().atMost(LONG).until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 16);
        assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
      }
      assertThat(retained(broker)).startsWith("16\n");
      assertThat(files(drop)).contains("checkpoint-000000000016.txt");
      Path seen = shop.write("seen.txt", String.join("\n", broker.take(TOPIC, 1, LONG)) + "\n\n");
      for (Path since : List.of(seen, drop)) {
        assertThat(shop.run("ledger", "verify", "--since", since.toString()))
            .startsWith("Verified: 16 entries");
      }
      rewrite(shop, 20);
      assertThat(shop.run("ledger", "verify")).startsWith("Verified: 20 entries");
      Program.Ended one = shop.attempt("ledger", "verify", "--since", seen.toString());
      assertThat(one.status()).isEqualTo(1);
      assertThat(one.out())
          .contains("the checkpoint that was kept: signs the root ", "history was rewritten since");
      Program.Ended all = shop.attempt("ledger", "verify", "--since", drop.toString());
      assertThat(all.status()).isEqualTo(1);
      assertThat(all.out())
          .contains("the checkpoint that was kept in " + drop + "/checkpoint-000000000005.txt: ")
          .contains("more that sign as much or more stand after");
      rewrite(shop, 7);
      theDaemonSaysSo(shop, broker);
    }
  }

  private static void theDaemonSaysSo(Workshop shop, Mosquitto broker) {
    try (DaemonProcess daemon = shop.daemon().awaitUp("broker")) {
      await()
          .atMost(LONG)
          .until(
              () ->
                  Json.of(broker.take("witnessmark/v1/shop-1/health", 1, LONG).get(0))
                      .path("reason")
                      .asText()
                      .contains("The log has 7 entries, but "));
      assertThat(daemon.log()).contains("checkpoint not dropped");
    }
  }

  /** Another history of some entries, signed with the stolen key. */
  private static void rewrite(Workshop shop, int entries) {
    shop.ledger()
        .unguarded(
            "DELETE FROM entry;",
            "DELETE FROM tile;",
            "DELETE FROM trace;",
            "DELETE FROM job;",
            "DELETE FROM cursor;",
            "DELETE FROM checkpoint;");
    for (int i = 0; i < entries; i++) {
      shop.run("operator", "enrol", "badge-" + (10 + i));
    }
  }

  private static String retained(Mosquitto broker) {
    List<String> lines = broker.take(TOPIC, 1, Duration.ofSeconds(5));
    return lines.isEmpty() ? "" : String.join("\n", lines.subList(1, lines.size()));
  }

  private static List<String> files(Path directory) throws Exception {
    try (Stream<Path> all = Files.list(directory)) {
      return all.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }
}
