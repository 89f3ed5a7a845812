package witnessmark.ledger.sqlite;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.TraceRow;

/** A log in a directory, with entries that say nothing but their number. */
final class LogOf {
  private static final String AT = "2026-11-25T10:00:00.000Z";
  private static final TraceRow ROW =
      new TraceRow("refused", AT, "none", null, null, null, null, null, null, null, null, null);

  private LogOf() {}

  static byte[] entry(long n) {
    String json =
        "{\"kind\":\"refused\",\"v\":1,\"at\":\"" + AT + "\",\"reason\":\"number " + n + "\"}";
    return json.getBytes(StandardCharsets.UTF_8);
  }

  static List<byte[]> entries(int size) {
    List<byte[]> entries = new ArrayList<>();
    for (int n = 0; n < size; n++) {
      entries.add(entry(n));
    }
    return entries;
  }

  static LedgerFiles begun(Path directory, int size) {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      grow(ledger, 0, size);
    }
    return files;
  }

  static void grow(Ledger ledger, int from, int to) {
    try (Ledger.Appending txn = ledger.begin()) {
      for (int n = from; n < to; n++) {
        txn.append(new Draft(entry(n), ROW, Optional.empty()));
      }
      txn.commit();
    }
  }
}
