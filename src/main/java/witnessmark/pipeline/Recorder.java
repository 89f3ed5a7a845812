package witnessmark.pipeline;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.entry.Moments;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.Stored;

/**
 * The log over its failures. After one nobody knows what was written: only opening anew tells, and
 * what was written after all is not written twice. For one thread.
 */
final class Recorder implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Recorder.class);

  private final Supplier<Ledger> opening;
  private final Missed missed;
  private Ledger ledger;
  private Journal journal;
  private int statements;

  /** The newest entry that was surely on record. */
  private Optional<Stored> newest = Optional.empty();

  /** The transaction whose commit failed, or seemed to. */
  private Optional<Journal.Attempt> doubtful = Optional.empty();

  Recorder(Supplier<Ledger> opening, Missed missed) {
    this.opening = opening;
    this.missed = missed;
  }

  /**
   * Opens the log, where it is not open.
   *
   * @throws LedgerException when it cannot be opened, or is not the one that was written before
   */
  void open() {
    if (journal != null) {
      return;
    }
    ledger = opening.get();
    Journal opened = new Journal(ledger);
    if (newest.isPresent() && !opened.holds(newest.get())) {
      throw new LedgerException(
          "The log is not the one that was written so far: entry "
              + newest.get().n()
              + " is missing or another. Put the newest ledger.db back in its place, or stop this"
              + " daemon and find out with: witnessmark ledger verify");
    }
    if (newest.isEmpty()) {
      newest = opened.newest();
    }
    journal = opened;
  }

  /** How many of the entries that were recorded last state what was not kept. */
  int statements() {
    return statements;
  }

  /** How many entries there are. */
  long size() {
    return journal.shop().size();
  }

  /**
   * Puts messages on record, with a statement of what was missed.
   *
   * @param because why it was missed
   * @throws RuntimeException when that fails; then the log is closed, and the same messages are to
   *     be given again
   */
  List<List<Outcome>> record(List<List<Arrival>> messages, String because) {
    try {
      open();
      Optional<Journal.Attempt> before = doubtful;
      if (before.isPresent() && journal.holds(before.get().last())) {
        return recorded(before.get().outcomes(), before);
      }
      missed.unstated();
      List<List<Outcome>> outcomes =
          journal.take(messages, missed.statement(Moments.now(), because));
      return recorded(outcomes, journal.attempt());
    } catch (RuntimeException e) { // of the log, or a state that contradicts it
      if (journal != null && journal.attempt().isPresent()) {
        doubtful = journal.attempt();
      }
      abandon();
      throw e;
    }
  }

  private List<List<Outcome>> recorded(
      List<List<Outcome>> outcomes, Optional<Journal.Attempt> attempt) {
    attempt.ifPresent(a -> newest = Optional.of(a.last()));
    doubtful = Optional.empty();
    statements = missed.stated();
    return outcomes;
  }

  /**
   * Looks whether anything can be recorded, without recording anything.
   *
   * @param closely by writing
   * @return how many entries there are, those of other processes too
   * @throws RuntimeException when nothing can
   */
  long look(boolean closely) {
    try {
      open();
      long size = ledger.inPlace();
      if (closely) {
        ledger.probe();
      }
      return size;
    } catch (RuntimeException e) {
      abandon();
      throw e;
    }
  }

  private void abandon() {
    journal = null;
    if (ledger != null) {
      try {
        ledger.close();
      } catch (LedgerException e) {
        LOG.atDebug().log("closing the failed log failed, too", e);
      }
      ledger = null;
    }
  }

  @Override
  public void close() {
    if (ledger != null) {
      ledger.close();
    }
  }
}
