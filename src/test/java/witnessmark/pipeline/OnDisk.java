package witnessmark.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import witnessmark.entry.Entry;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;

/** Entries put into a real log. */
public final class OnDisk {
  private OnDisk() {}

  /** What is seen in a new log in that directory that holds the entries. */
  public static <T> T read(Path directory, List<Entry> entries, Function<Reading, T> look) {
    LedgerFiles files = new LedgerFiles(directory);
    try (SqliteLedger ledger = SqliteLedger.create(files);
        Appending txn = ledger.begin()) {
      entries.forEach(e -> txn.append(Drafts.of(e)));
      txn.commit();
    }
    try (Reading reading = SqliteReading.open(files)) {
      return look.apply(reading);
    }
  }
}
