package witnessmark.pipeline;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;

/** What the log knows beyond the state of the shop. */
public interface Seen {
  /** The events of that wrench with that number, or without any, and that fingerprint. */
  List<Entry.TorqueTaken> same(String wrench, OptionalLong number, String fingerprint);

  /** The events of that wrench with that number. */
  List<Entry.TorqueTaken> numbered(String wrench, long number);

  /** The entry of that number. */
  Optional<Entry> entry(long n);

  /** The newest scan at a station, where it is not long past. */
  Optional<Entry.Scan> scan(String station);

  /** The job that was open at a station at a moment and has ended since. */
  Optional<String> endedJob(String station, Instant moment);
}
