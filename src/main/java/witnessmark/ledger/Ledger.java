package witnessmark.ledger;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The log, open for appending. Any number of processes may have it open; each append first takes in
 * what others appended. For one thread.
 */
public interface Ledger extends AutoCloseable {
  /** The log's own name, which its checkpoints sign. */
  String origin();

  /**
   * The entries that the state of the shop follows from: those about the shop, and those of
   * unfinished jobs, by number. The first transaction then tells what was appended after them.
   */
  Live live();

  /**
   * Begins to append, alone: others wait.
   *
   * @throws LedgerException when the log cannot be written or its end is not as it was signed
   */
  Appending begin();

  /**
   * Writes something that changes nothing, to see whether anything can be written.
   *
   * @throws LedgerException when nothing can
   */
  void probe();

  /**
   * Looks whether what is written is still the log in its place.
   *
   * @return how many entries it has, those of other processes too
   * @throws LedgerException when it was removed or replaced, or cannot be read
   */
  long inPlace();

  @Override
  void close();

  /** One transaction. Closing it without {@link #commit} takes everything back. */
  interface Appending extends AutoCloseable {
    /** Entries appended since this ledger last looked, by others or before it was opened. */
    List<Stored> news();

    /**
     * The bytes of the events of that wrench with that number, or without any, and that
     * fingerprint, on record or in this transaction; the newest hundred.
     */
    List<byte[]> same(String wrench, OptionalLong number, String fingerprint);

    /**
     * The bytes of the events of that wrench with that number, on record or in this transaction;
     * the newest hundred.
     */
    List<byte[]> numbered(String wrench, long number);

    /**
     * The job that was open at a station at a moment and has ended since.
     *
     * @param moment RFC 3339 UTC, as the log writes it
     */
    Optional<String> endedJob(String station, String moment);

    /** The entry of that number, on record or in this transaction. */
    Optional<Stored> entry(long n);

    /** The newest entry of that kind from that station among the newest thousand entries. */
    Optional<Stored> newest(String kind, String station);

    /**
     * Hands the log over to another key, which signs from this transaction's commit on. What comes
     * back has to be in the entry that is appended next.
     */
    Handover handOver(LogKey next);

    /** Appends and returns the entry's number. */
    long append(Draft draft);

    /**
     * Makes the appended entries durable, with a new signed checkpoint. When this returns they are
     * on disk; when it throws, nobody knows before the log is opened anew.
     */
    void commit();

    @Override
    void close();
  }
}
