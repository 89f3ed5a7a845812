package witnessmark.tamper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.pipeline.Drafts;

/**
 * A writer that is killed with SIGKILL once everything is committed: {@code Killed DIRECTORY SEED}.
 */
final class Killed {
  private Killed() {}

  public static void main(String[] args) throws InterruptedException {
    List<Entry> entries = History.entries(Long.parseLong(args[1]));
    SqliteLedger ledger = SqliteLedger.create(new LedgerFiles(Path.of(args[0])));
    ledger.live();
    for (int from = 0; from < entries.size(); from += 10) {
      try (Appending txn = ledger.begin()) {
        entries
            .subList(from, Math.min(entries.size(), from + 10))
            .forEach(e -> txn.append(Drafts.of(e)));
        txn.commit();
      }
    }
    System.out.println("committed");
    Thread.sleep(60_000);
  }

  /** Leaves a log in the directory as a kill leaves it. */
  static void leave(Path directory, long seed) {
    try {
      Process writer =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  Killed.class.getName(),
                  directory.toString(),
                  Long.toString(seed))
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      boolean committed = writer.inputReader().lines().anyMatch("committed"::equals);
      writer.destroyForcibly().waitFor();
      if (!committed) {
        throw new IllegalStateException("the writer ended before it had committed");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
