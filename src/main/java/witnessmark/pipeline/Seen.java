package witnessmark.pipeline;

import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;

/** What the log knows of earlier events. */
public interface Seen {
  /** Whether an event of that wrench with that number, or without any, and that fingerprint is. */
  boolean before(String wrench, OptionalLong number, String fingerprint);

  /** The entry of that number. */
  Optional<Entry> entry(long n);

  /** The newest scan at a station, where it is not long past. */
  Optional<Entry.Scan> scan(String station);
}
