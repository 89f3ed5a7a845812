package witnessmark.trial.faults;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Some program reads the log in one transaction that it does not end. */
final class LongReader implements Fault {
  private static final long TOLD = 64 << 20;
  private static final int MOST = 20_000;

  @Override
  public String title() {
    return "a reader that does not end its transaction";
  }

  @Override
  public String promise() {
    return "recording goes on; health says so once the WAL file has more than 64 MB; the file gets"
        + " small again when the reader is gone";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(10);
      Path file = rig.shop.data().resolve("ledger.db");
      Path wal = rig.shop.data().resolve("ledger.db-wal");
      Process reader =
          new ProcessBuilder("sqlite3", file.toString()).redirectErrorStream(true).start();
      OutputStream in = reader.getOutputStream();
      in.write("BEGIN; SELECT count(*) FROM entry;\n".getBytes(UTF_8));
      in.flush();
      reader.inputReader().readLine();
      while (Files.size(wal) <= TOLD && kept.sent() < MOST) {
        kept.send(100);
      }
      kept.send(100);
      rig.becomes(
          "health says so", () -> rig.healthSays("degraded", "some program has been reading"));
      rig.see("health: " + rig.lastHealth().path("reason").asText());
      rig.becomes("recording goes on", rig::allThere);
      long most = Files.size(wal);
      reader.destroyForcibly();
      reader.waitFor();
      kept.send(20);
      rig.becomes("health is ok again", () -> rig.healthSays("ok", ""));
      rig.see(
          "the WAL file had %d MB after %d readings, and %d MB when the reader was gone"
              .formatted(most >> 20, kept.sent(), Files.size(wal) >> 20));
      return rig.judged();
    }
  }
}
