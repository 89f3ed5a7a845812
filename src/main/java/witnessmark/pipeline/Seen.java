package witnessmark.pipeline;

import java.util.OptionalLong;

/** What the log knows of earlier events. */
public interface Seen {
  /** Whether an event of that wrench with that number, or without any, and that fingerprint is. */
  boolean before(String wrench, OptionalLong number, String fingerprint);
}
