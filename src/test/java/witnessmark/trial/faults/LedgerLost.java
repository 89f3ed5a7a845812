package witnessmark.trial.faults;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** The log's file is moved away under the running daemon, and put back. */
final class LedgerLost implements Fault {
  @Override
  public String title() {
    return "ledger moved away while the daemon runs, then put back";
  }

  @Override
  public String promise() {
    return "noticed within about a second, before anything more is acknowledged; said everywhere;"
        + " recording goes on when it is back";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Cable cable = rig.cable();
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(20);
      cable.send(5);
      rig.becomes("recorded before", rig::allThere);
      long acknowledged = rig.acknowledged();
      Path away = Files.createDirectory(directory.resolve("away"));
      long began = System.nanoTime();
      move(rig.shop.data(), away);
      rig.becomes("health says it", () -> rig.healthSays("degraded", "Nothing can be recorded: "));
      rig.see(
          "health %d ms after: \"%s\""
              .formatted(
                  TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began),
                  rig.lastHealth().path("reason").asText()));
      rig.becomes("the display says so", () -> rig.lastDisplay().equals("not-recording"));
      kept.send(10 * scale);
      cable.send(10 * scale);
      TimeUnit.SECONDS.sleep(2);
      rig.promise("nothing is acknowledged meanwhile", rig.acknowledged() == acknowledged);
      rig.promise("no new log was begun", Files.notExists(rig.shop.data().resolve("ledger.db")));
      move(away, rig.shop.data());
      rig.becomes("health is ok again", () -> rig.healthSays("ok", ""));
      rig.becomes("the display goes on", () -> rig.lastDisplay().equals("attest"));
      rig.see(
          "log: %d line(s) that nothing can be recorded, then: %s"
              .formatted(rig.logged("Loop: nothing can be recorded"), rig.line("recording again")));
      return rig.judged();
    }
  }

  private static void move(Path from, Path to) throws java.io.IOException {
    for (String name : new String[] {"ledger.db", "ledger.db-wal", "ledger.db-shm"}) {
      if (Files.exists(from.resolve(name))) {
        Files.move(from.resolve(name), to.resolve(name));
      }
    }
  }
}
