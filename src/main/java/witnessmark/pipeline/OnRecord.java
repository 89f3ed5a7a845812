package witnessmark.pipeline;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.ledger.Ledger.Appending;

/** What the log knows, asked within a transaction. */
public record OnRecord(Appending txn) implements Seen {
  @Override
  public List<Entry.TorqueTaken> same(String wrench, OptionalLong number, String fingerprint) {
    return torques(txn.same(wrench, number, fingerprint));
  }

  @Override
  public List<Entry.TorqueTaken> numbered(String wrench, long number) {
    return torques(txn.numbered(wrench, number));
  }

  @Override
  public Optional<Entry> entry(long n) {
    return txn.entry(n).map(s -> EntryJson.read(s.bytes()));
  }

  @Override
  public Optional<Entry.Scan> scan(String station) {
    return txn.newest("scan", station).map(s -> (Entry.Scan) EntryJson.read(s.bytes()));
  }

  @Override
  public Optional<String> endedJob(String station, Instant moment) {
    return txn.endedJob(station, Moments.text(moment));
  }

  private static List<Entry.TorqueTaken> torques(List<byte[]> entries) {
    return entries.stream().map(bytes -> (Entry.TorqueTaken) EntryJson.read(bytes)).toList();
  }
}
