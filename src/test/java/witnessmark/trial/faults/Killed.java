package witnessmark.trial.faults;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The daemon is killed (SIGKILL) at random moments while readings come. */
final class Killed implements Fault {
  @Override
  public String title() {
    return "daemon killed with -9 at random moments";
  }

  @Override
  public String promise() {
    return "every reading that its sender keeps is on record once and its verdict told; no file of"
        + " the program is left in the temporary directory";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      long seed = new Random().nextLong();
      Random random = new Random(seed);
      int amid = 0;
      for (int kill = 0; kill < 4 * scale; kill++) {
        Thread sending = new Thread(() -> send(kept));
        long before = rig.onRecord(kept);
        sending.start();
        TimeUnit.MILLISECONDS.sleep(random.nextInt(400));
        long recorded = rig.onRecord(kept);
        rig.daemon.kill();
        amid += recorded > before || recorded < kept.sent() ? 1 : 0;
        sending.join();
        rig.start();
      }
      rig.see("%d kills, %d of them amid the flow, seed %d".formatted(4 * scale, amid, seed));
      long left;
      try (Stream<Path> files = Files.walk(directory)) {
        left = files.filter(f -> f.getFileName().toString().contains("sqlitejdbc")).count();
      }
      rig.see(left + " unpacked SQLite libraries left behind");
      rig.promise("no unpacked library is left, not " + left, left == 0);
      return rig.judged();
    }
  }

  private static void send(Gateway kept) {
    try {
      kept.send(60);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
