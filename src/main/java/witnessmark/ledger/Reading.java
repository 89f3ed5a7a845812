package witnessmark.ledger;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** The log, open for reading. Reads what is committed, in short transactions. For one thread. */
public interface Reading extends AutoCloseable {
  /** How many entries there are. */
  long size();

  /** What the state of the shop follows from, as of one moment. */
  Live live();

  /** The entry of that number. */
  Optional<Stored> entry(long n);

  /** Entries from number {@code n} on, at most {@code limit} of them. */
  List<Stored> from(long n, int limit);

  /**
   * The hashes of the full subtrees of 256^level entries, from that of number {@code index} on, at
   * most {@code limit} of them.
   */
  List<byte[]> tiles(int level, long index, int limit);

  /**
   * Looks at several things as they are at one moment, whatever is appended meanwhile; a look
   * inside a look is of the same moment.
   */
  <T> T atOneMoment(Supplier<T> look);

  /** Hands every matching entry over, by number, in constant memory. */
  default void find(Query query, Consumer<Stored> each) {
    chunks(query, chunk -> chunk.forEach(each));
  }

  /** Hands every matching entry over, by number, some hundreds at a time. */
  void chunks(Query query, Consumer<List<Stored>> each);

  /**
   * Entries about the whole shop, by number: by index, however long the log is.
   *
   * @param kinds which of them; only kinds of scope {@code shop} are found
   * @param before only those before that entry
   */
  List<Stored> registers(List<String> kinds, long before);

  /** Jobs, by the number of their first entry. */
  List<JobRow> jobs(Optional<String> unit, Optional<String> job, boolean unfinishedOnly);

  /** Every station that a job was last at. */
  List<String> stations();

  /** The newest signed checkpoint; empty while the log has no entry. */
  Optional<String> checkpoint();

  /** How far the reader of that name had come; 0 at first. */
  long cursor(String name);

  /** Notes how far the reader of that name has come. */
  void cursor(String name, long n);

  @Override
  void close();

  /**
   * Which entries to find; what is empty matches all.
   *
   * @param from taken at or after, RFC 3339 UTC
   * @param to taken before, RFC 3339 UTC
   */
  record Query(
      Optional<String> unit,
      Optional<String> job,
      Optional<String> procedure,
      Optional<String> revision,
      Optional<String> fastener,
      Optional<String> wrench,
      Optional<String> operator,
      Optional<String> station,
      Optional<String> kind,
      Optional<String> verdict,
      Optional<String> from,
      Optional<String> to) {
    /** Of any revision. */
    public Query(
        Optional<String> unit,
        Optional<String> job,
        Optional<String> procedure,
        Optional<String> fastener,
        Optional<String> wrench,
        Optional<String> operator,
        Optional<String> station,
        Optional<String> kind,
        Optional<String> verdict,
        Optional<String> from,
        Optional<String> to) {
      this(
          unit,
          job,
          procedure,
          Optional.empty(),
          fastener,
          wrench,
          operator,
          station,
          kind,
          verdict,
          from,
          to);
    }
  }

  /**
   * A job in the list of jobs.
   *
   * @param ended its last entry's number, while it is unfinished empty
   */
  record JobRow(
      String job,
      String unit,
      String procedure,
      String revision,
      String station,
      String status,
      long opened,
      Optional<Long> ended) {}
}
