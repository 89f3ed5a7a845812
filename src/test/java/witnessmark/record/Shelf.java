package witnessmark.record;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import witnessmark.entry.Entry;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Drafts;

/** Entries put on record in a real log, and what is gathered from there. */
public final class Shelf {
  private final LedgerFiles files;

  /**
   * @param directory a new one
   */
  public Shelf(Path directory, List<Entry> entries) {
    files = new LedgerFiles(directory);
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      ledger.live();
      try (Appending txn = ledger.begin()) {
        entries.forEach(e -> txn.append(Drafts.of(e)));
        txn.commit();
      }
    }
  }

  /** The bytes that the record of the unit follows from. */
  public SortedMap<Long, byte[]> unit(String unit) {
    try (SqliteReading reading = SqliteReading.open(files)) {
      return Gather.of(reading, Optional.of(unit), Optional.empty());
    }
  }

  public SortedMap<Long, byte[]> job(String job) {
    try (SqliteReading reading = SqliteReading.open(files)) {
      return Gather.of(reading, Optional.empty(), Optional.of(job));
    }
  }

  public LedgerFiles files() {
    return files;
  }

  public String checkpoint() {
    try (SqliteReading reading = SqliteReading.open(files)) {
      return reading.checkpoint().orElseThrow();
    }
  }
}
