package witnessmark.trial.faults;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Program;

/** A page of the ledger's file is damaged, or the file is cut off, while the daemon is down. */
final class Damaged implements Fault {
  private static final int PAGE = 4096;

  @Override
  public String title() {
    return "ledger file damaged: a page overwritten, the file cut off";
  }

  @Override
  public String promise() {
    return "found at the start (status 4) or by ledger verify (status 1 or 4), before or after"
        + " anything is appended; a copy put back is gone on with and nothing is lost";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(300);
      rig.becomes("recorded before", rig::allThere);
      rig.daemon.stop();
      Path file = rig.shop.data().resolve("ledger.db");
      byte[] whole = Files.readAllBytes(file);
      kept.send(5);
      long pages = whole.length / PAGE;
      int found = 0;
      int refused = 0;
      for (long page : List.of(0L, root(rig, "entry"), root(rig, "trace"), pages / 2, pages - 2)) {
        overwrite(file, page);
        boolean atStart = refuses(rig, "page " + (page + 1) + " of " + pages + " overwritten");
        boolean verified = verifies(rig);
        refused += atStart ? 1 : 0;
        found += atStart || !verified ? 1 : 0;
        rig.promise("page " + (page + 1) + " is found", atStart || !verified);
        Files.write(file, whole);
      }
      for (int share : new int[] {2, 10}) {
        Files.write(file, java.util.Arrays.copyOf(whole, whole.length - whole.length / share));
        boolean atStart = refuses(rig, "a " + share + "th of the file cut off");
        boolean verified = verifies(rig);
        refused += atStart ? 1 : 0;
        found += atStart || !verified ? 1 : 0;
        rig.promise("a cut of 1/" + share + " is found", atStart || !verified);
        Files.write(file, whole);
      }
      rig.see("7 damages, %d refused at the start, %d found in all".formatted(refused, found));
      rig.start();
      return rig.judged();
    }
  }

  /**
   * Whether the daemon ends with 4, or says that nothing can be recorded, and acknowledges nothing.
   */
  private static boolean refuses(Rig rig, String damage) throws Exception {
    long acknowledged = rig.acknowledged();
    DaemonProcess daemon = rig.shop.daemon();
    try (daemon) {
      long until = System.nanoTime() + 6_000_000_000L;
      while (!daemon.ended()
          && System.nanoTime() < until
          && !daemon.log().contains("nothing can")) {
        Thread.sleep(50);
      }
      boolean refused = daemon.ended() || daemon.log().contains("nothing can be recorded");
      String last = daemon.log().lines().reduce("", (older, newer) -> newer).strip();
      rig.see(
          damage
              + ": "
              + (daemon.ended() ? "exit status " + daemon.status() + ", " : "it runs; ")
              + last);
      rig.promise(damage + ": status 4", !daemon.ended() || daemon.status() == 4);
      rig.promise(
          damage + ": nothing acknowledged when refused",
          !refused || rig.acknowledged() == acknowledged);
      return refused;
    }
  }

  private static boolean verifies(Rig rig) {
    Program.Ended verify = rig.shop.attempt("ledger", "verify");
    String first = (verify.out() + verify.err()).lines().findFirst().orElse("");
    rig.see(
        "ledger verify then: status "
            + verify.status()
            + ", "
            + (first.length() > 160 ? first.substring(0, 160) + " …" : first));
    return verify.status() == 0;
  }

  private static long root(Rig rig, String table) {
    return rig.shop
        .ledger()
        .number("SELECT rootpage - 1 FROM sqlite_master WHERE name = '" + table + "';");
  }

  private static void overwrite(Path file, long page) throws IOException {
    byte[] noise = new byte[PAGE];
    new Random(page).nextBytes(noise);
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      bytes.seek(page * PAGE);
      bytes.write(noise);
    }
  }
}
