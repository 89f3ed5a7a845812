package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Workshop;

/** Backups while the daemon records, some of them killed, and one of them put in its place. */
class BackedUpIT {
  private static final int EVENTS = 2000;
  private static final int BACKUPS = 4;
  private static final int KILLS = 8;
  private static final Duration LONG = Duration.ofSeconds(90);
  private static final Pattern SIZE = Pattern.compile("verified: ([0-9]+) entries");

  @TempDir private Path directory;

  @Test
  void backupsUnderLoadAreWholeAndKilledOnesLeaveNothingUnderTheirName() throws Exception {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    System.out.println("BackedUpIT seed " + seed);
    Workshop shop = Workshop.furnished(directory);
    try (Mosquitto broker = Mosquitto.start(directory);
        DaemonProcess daemon = shop.on(broker).daemon(broker);
        Source source = new Source(broker, Readings.of(EVENTS), 10)) {
      source.allow(EVENTS);
      long last = 0;
      int amid = 0;
      long took = 0;
      for (int i = 0; i < BACKUPS; i++) {
        int sent = source.sent();
        long begun = System.nanoTime();
        String said = shop.run("ledger", "backup", "backup-" + i, "--with-key");
        took = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
        amid += sent > 0 && source.sent() > sent ? 1 : 0;
        Matcher size = SIZE.matcher(said);
        assertThat(size.find()).as(said).isTrue();
        long entries = Long.parseLong(size.group(1));
        assertThat(entries).as("seed " + seed).isGreaterThanOrEqualTo(last);
        last = entries;
        assertThat(shop.run("ledger", "verify", "--data", "backup-" + i))
            .startsWith("Verified: " + entries + " entries");
      }
      assertThat(amid).as("backups amid the flow").isPositive();
      int unfinished = 0;
      for (int i = 0; i < KILLS; i++) {
        Process backup =
            shop.program()
                .begin(Files.createTempFile(directory, "backup", ".log"), "ledger", "backup", "k");
        backup.waitFor(took / 3 + random.nextInt((int) took), TimeUnit.MILLISECONDS);
        backup.destroyForcibly().waitFor();
        unfinished += Files.exists(directory.resolve("k.unfinished")) ? 1 : 0;
        if (Files.exists(directory.resolve("k"))) {
          assertThat(shop.run("ledger", "verify", "--data", "k")).startsWith("Verified: ");
          Files.move(directory.resolve("k"), directory.resolve("k-" + i));
        }
      }
      System.out.println("killed amid a backup: " + unfinished + " of " + KILLS);
      shop.run("ledger", "backup", "k");
      assertThat(directory.resolve("k.unfinished")).doesNotExist();
      await("every event on record, seed " + seed)
          .atMost(LONG)
          .until(() -> recorded(shop) >= EVENTS);
      assertThat(daemon.log()).doesNotContain("nothing can be recorded");
      daemon.stop();
    }
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: " + (5 + EVENTS) + " entries");
    goesOnFrom(shop);
  }

  private void goesOnFrom(Workshop shop) throws Exception {
    shop.run("ledger", "checkpoint");
    Path newest = shop.write("newest.txt", shop.run("ledger", "checkpoint"));
    Files.move(directory.resolve("witnessmark-data"), directory.resolve("lost"));
    var refused = shop.attempt("ledger", "restore", "backup-0", "--since", newest.toString());
    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.err()).startsWith("This backup is older than what others have seen: ");
    shop.run("ledger", "restore", "backup-0");
    shop.run("operator", "enrol", "badge-12");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: ");
    assertThat(shop.attempt("ledger", "verify", "--since", newest.toString()).status())
        .isEqualTo(1);
  }

  private static long recorded(Workshop shop) {
    return shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'torque';");
  }
}
