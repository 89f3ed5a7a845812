package witnessmark.record;

import java.util.Objects;
import witnessmark.entry.Entry;

/** An entry and its number in the log. */
public record Numbered(long n, Entry entry) {
  public Numbered {
    Objects.requireNonNull(entry, "entry");
  }
}
