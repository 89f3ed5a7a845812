package witnessmark.pipeline;

/** What the log knows of earlier events. */
public interface Seen {
  /** Whether an event of that wrench with that fingerprint is on record. */
  boolean before(String wrench, String fingerprint);
}
