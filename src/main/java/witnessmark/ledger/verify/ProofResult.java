package witnessmark.ledger.verify;

import java.util.List;

/** What the check of a proof came to. */
public sealed interface ProofResult {
  /**
   * Every entry of the proof is in the log that the key signs.
   *
   * @param checkpoint the signed tree they are in
   * @param entries by number, at least one
   * @param keys the changes of the log's key that were followed
   */
  record Included(Checkpoint checkpoint, List<Entry> entries, List<KeyStep> keys)
      implements ProofResult {
    public Included {
      entries = List.copyOf(entries);
      keys = List.copyOf(keys);
    }
  }

  /**
   * A proved entry.
   *
   * @param n its number
   * @param bytes its exact bytes; not copied, so not to be changed
   */
  record Entry(long n, byte[] bytes) {}

  /**
   * The log of the later checkpoint holds all entries of the earlier one, unchanged, in front.
   *
   * @param keys the changes of the log's key that were followed
   */
  record GoesOn(Checkpoint earlier, Checkpoint later, List<KeyStep> keys) implements ProofResult {
    public GoesOn {
      keys = List.copyOf(keys);
    }
  }

  /**
   * Nothing is proved.
   *
   * @param faults why, a sentence each without its full stop; at least one
   */
  record Refused(List<String> faults) implements ProofResult {
    public Refused {
      faults = List.copyOf(faults);
    }
  }
}
