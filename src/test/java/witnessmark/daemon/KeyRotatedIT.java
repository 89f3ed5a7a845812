package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Workshop;

/** The log's key changed again and again while the daemon records, some changes killed. */
class KeyRotatedIT {
  private static final int EVENTS = 2000;
  private static final int CHANGES = 3;
  private static final int KILLS = 12;
  private static final Duration LONG = Duration.ofSeconds(90);

  @TempDir private Path directory;

  @Test
  void theDaemonGoesOnUnderEveryNewKeyAndTheFirstOneChecksItAll() throws Exception {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    System.out.println("KeyRotatedIT seed " + seed);
    Workshop shop = Workshop.furnished(directory);
    Files.copy(directory.resolve("witnessmark-data/ledger.pub"), directory.resolve("shop.pub"));
    Path before = shop.write("before.txt", shop.run("ledger", "checkpoint"));
    try (Mosquitto broker = Mosquitto.start(directory);
        DaemonProcess daemon = shop.on(broker).daemon(broker);
        Source source = new Source(broker, Readings.of(EVENTS), 10)) {
      source.allow(EVENTS);
      int amid = 0;
      long took = 0;
      for (int i = 0; i < CHANGES; i++) {
        int sent = source.sent();
        long begun = System.nanoTime();
        shop.run("ledger", "rotate-key");
        took = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
        amid += sent > 0 && source.sent() > sent ? 1 : 0;
      }
      assertThat(amid).as("changes amid the flow").isPositive();
      for (int i = 0; i < KILLS; i++) {
        Process change =
            shop.program()
                .begin(Files.createTempFile(directory, "rotate", ".log"), "ledger", "rotate-key");
        change.waitFor(took / 2 + random.nextInt((int) took / 2 + 1), TimeUnit.MILLISECONDS);
        change.destroyForcibly().waitFor();
      }
      await("every event on record, seed " + seed)
          .atMost(LONG)
          .until(() -> recorded(shop) >= EVENTS);
      assertThat(daemon.log())
          .doesNotContain("nothing can be recorded")
          .containsPattern(
              "SigningKey: the log is signed by another key from here on"
                  + " verifier=\"witnessmark\\.local/log/[0-9a-f]{16}\\+[0-9a-f]{8}\\+");
      daemon.stop();
    }
    shop.run("operator", "enrol", "badge-12");
    long changes =
        shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'log-key-changed';");
    System.out.println("changes on record: " + changes);
    assertThat(changes).isBetween((long) CHANGES, (long) CHANGES + KILLS);
    for (String key : new String[] {"shop.pub", "witnessmark-data/ledger.pub"}) {
      String said = shop.run("ledger", "verify", "--key", key, "--since", before.toString());
      assertThat(said).as("seed " + seed).startsWith("Verified: " + (6 + EVENTS + changes));
      assertThat(said.split("Its key was changed at entry", -1)).hasSize((int) changes + 1);
    }
  }

  private static long recorded(Workshop shop) {
    return shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'torque';");
  }
}
