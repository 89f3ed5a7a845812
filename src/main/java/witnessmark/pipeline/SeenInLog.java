package witnessmark.pipeline;

import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Ledger.Appending;

/** What the log knows, as of a transaction. */
record SeenInLog(Appending txn) implements Seen {
  @Override
  public boolean before(String wrench, OptionalLong number, String fingerprint) {
    return txn.seen(wrench, number, fingerprint);
  }

  @Override
  public Optional<Entry> entry(long n) {
    return txn.entry(n).map(s -> EntryJson.read(s.bytes()));
  }

  @Override
  public Optional<Entry.Scan> scan(String station) {
    return txn.newest("scan", station).map(s -> (Entry.Scan) EntryJson.read(s.bytes()));
  }
}
