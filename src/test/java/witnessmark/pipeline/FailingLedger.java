package witnessmark.pipeline;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Handover;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.Live;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.Stored;

/** A ledger whose commits fail as told: before they are stored, or after. */
final class FailingLedger implements Ledger {
  /** What a commit does; the next is taken when one has failed. */
  enum Fault {
    NONE,
    NOT_STORED,
    STORED_ONCE
  }

  static final class Switch {
    final AtomicReference<Fault> fault = new AtomicReference<>(Fault.NONE);
    final AtomicInteger failures = new AtomicInteger();
  }

  private final Ledger ledger;
  private final Switch how;

  FailingLedger(Ledger ledger, Switch how) {
    this.ledger = ledger;
    this.how = how;
  }

  @Override
  public String origin() {
    return ledger.origin();
  }

  @Override
  public Live live() {
    return ledger.live();
  }

  @Override
  public Appending begin() {
    return new Failing(ledger.begin());
  }

  @Override
  public void probe() {
    if (how.fault.get() == Fault.NOT_STORED) {
      throw full();
    }
  }

  @Override
  public long inPlace() {
    return ledger.inPlace();
  }

  @Override
  public void close() {
    ledger.close();
  }

  private LedgerException full() {
    how.failures.incrementAndGet();
    return new LedgerException("the disk is full");
  }

  private final class Failing implements Appending {
    private final Appending txn;

    Failing(Appending txn) {
      this.txn = txn;
    }

    @Override
    public List<Stored> news() {
      return txn.news();
    }

    @Override
    public List<byte[]> same(String wrench, OptionalLong number, String fingerprint) {
      return txn.same(wrench, number, fingerprint);
    }

    @Override
    public List<byte[]> numbered(String wrench, long number) {
      return txn.numbered(wrench, number);
    }

    @Override
    public Optional<String> endedJob(String station, String moment) {
      return txn.endedJob(station, moment);
    }

    @Override
    public Optional<Stored> entry(long n) {
      return txn.entry(n);
    }

    @Override
    public Optional<Stored> newest(String kind, String station) {
      return txn.newest(kind, station);
    }

    @Override
    public Handover handOver(LogKey next) {
      return txn.handOver(next);
    }

    @Override
    public long append(Draft draft) {
      return txn.append(draft);
    }

    @Override
    public void commit() {
      if (how.fault.get() == Fault.NOT_STORED) {
        throw full();
      }
      txn.commit();
      if (how.fault.compareAndSet(Fault.STORED_ONCE, Fault.NONE)) {
        throw full();
      }
    }

    @Override
    public void close() {
      txn.close();
    }
  }
}
