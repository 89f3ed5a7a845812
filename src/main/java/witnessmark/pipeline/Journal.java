package witnessmark.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import witnessmark.desk.Command;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Handover;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.Stored;

/**
 * The ledger and the shop that follows from it, kept in step. For one thread.
 *
 * <p>The shop changes only when a transaction is on disk; before deciding, what other processes
 * appended is taken in.
 */
public final class Journal {
  private final Ledger ledger;
  private Shop shop;
  private Optional<Attempt> attempt = Optional.empty();

  public Journal(Ledger ledger) {
    this.ledger = ledger;
    this.shop = Replay.of(ledger.live());
  }

  /**
   * A transaction that was about to be committed.
   *
   * @param last its last entry
   * @param outcomes what came of each message
   */
  record Attempt(Stored last, List<List<Outcome>> outcomes) {}

  /** The newest transaction of {@link #take} that came as far as its commit and had entries. */
  Optional<Attempt> attempt() {
    return attempt;
  }

  /** The newest entry on record; empty in an empty log. */
  Optional<Stored> newest() {
    return shop.size() == 0 ? Optional.empty() : onRecord(shop.size() - 1);
  }

  /** Whether that very entry is on record. */
  boolean holds(Stored entry) {
    return onRecord(entry.n())
        .filter(found -> Arrays.equals(found.bytes(), entry.bytes()))
        .isPresent();
  }

  private Optional<Stored> onRecord(long n) {
    try (Appending txn = ledger.begin()) {
      return txn.entry(n);
    }
  }

  /** The shop as of the last transaction. */
  public Shop shop() {
    return shop;
  }

  /** The shop as it stands now, with what other processes appended. */
  public Shop current() {
    try (Appending txn = ledger.begin()) {
      Shop now = caughtUp(txn);
      txn.commit();
      shop = now;
      return now;
    }
  }

  /**
   * Carries out a person's command.
   *
   * @return the number of its first entry
   * @throws witnessmark.desk.Declined when the answer is no; nothing is appended then
   * @throws witnessmark.ledger.LedgerException when it could not be recorded
   */
  public long carryOut(Command command, Instant at) {
    return carryOut(command, at, Optional.empty());
  }

  /**
   * Carries out a person's command, signed where it must be.
   *
   * @param pen the key of whoever decides, where it is at hand
   * @see #carryOut(Command, Instant)
   */
  public long carryOut(Command command, Instant at, Optional<Pen> pen) {
    Signing signing = new Signing(ledger.origin(), pen);
    try (Appending txn = ledger.begin()) {
      Shop now = caughtUp(txn);
      long first = now.size();
      for (Entry entry : command.decide(now, at)) {
        now = now.after(txn.append(signing.draft(now, entry)), entry);
      }
      txn.commit();
      shop = now;
      return first;
    }
  }

  /**
   * Puts on record that the log goes over to another key, which signs from that entry on.
   *
   * @return the entry's number
   * @throws witnessmark.ledger.LedgerException when it could not be recorded
   */
  public long handOver(LogKey next, Instant at) {
    try (Appending txn = ledger.begin()) {
      Shop now = caughtUp(txn);
      Handover handover = txn.handOver(next);
      Entry entry = new Entry.LogKeyChanged(at, handover.from(), handover.to(), handover.voucher());
      long n = txn.append(Drafts.of(entry));
      txn.commit();
      shop = now.after(n, entry);
      return n;
    }
  }

  /** Puts an entry on record that no command makes, such as the first one. */
  public void note(Entry entry) {
    carryOut((s, at) -> List.of(entry), entry.at());
  }

  /**
   * Puts everything that arrived on record, in one transaction. When this returns it is on disk.
   *
   * @param notes entries that no message makes, to be recorded first
   * @return what came of each, in order
   * @throws witnessmark.ledger.LedgerException when it could not be recorded; nothing has changed
   */
  List<List<Outcome>> take(List<List<Arrival>> messages, List<? extends Entry> notes) {
    attempt = Optional.empty();
    try (Appending txn = ledger.begin()) {
      Shop now = caughtUp(txn);
      Stored last = null;
      for (Entry note : notes) {
        last = appended(txn, note);
        now = now.after(last.n(), note);
      }
      List<List<Outcome>> all = new ArrayList<>();
      for (List<Arrival> message : messages) {
        List<Outcome> outcomes = new ArrayList<>();
        for (Arrival arrival : message) {
          Outcome outcome = step(now, arrival, txn);
          for (Entry entry : outcome.entries()) {
            last = appended(txn, entry);
            now = now.after(last.n(), entry);
          }
          outcomes.add(outcome);
        }
        all.add(outcomes);
      }
      attempt = Optional.ofNullable(last).map(l -> new Attempt(l, List.copyOf(all)));
      txn.commit();
      shop = now;
      return all;
    }
  }

  /** The same without notes. */
  public List<List<Outcome>> take(List<List<Arrival>> messages) {
    return take(messages, List.of());
  }

  private static Stored appended(Appending txn, Entry entry) {
    Draft draft = Drafts.of(entry);
    return new Stored(txn.append(draft), draft.bytes());
  }

  /** A fault of the program itself while deciding about one arrival costs that arrival only. */
  private static Outcome step(Shop now, Arrival arrival, Appending txn) {
    try {
      return Step.take(now, arrival, new OnRecord(txn));
    } catch (LedgerException e) {
      throw e;
    } catch (RuntimeException e) {
      return Step.undecided(arrival, e);
    }
  }

  private Shop caughtUp(Appending txn) {
    return Replay.after(shop, txn.news());
  }
}
