package witnessmark.pipeline;

import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import witnessmark.entry.Entry;

/** What the writer has counted since it started, readable by any thread. */
public final class Counts {
  private final AtomicLong entries = new AtomicLong();
  private final AtomicLong events = new AtomicLong();
  private final AtomicLong refused = new AtomicLong();
  private final AtomicLong repeats = new AtomicLong();
  private final AtomicLong waiting = new AtomicLong();
  private final AtomicLong notKept = new AtomicLong();
  private final AtomicReference<String> trouble = new AtomicReference<>();

  void took(Outcome outcome) {
    if (outcome.repeat()) {
      repeats.incrementAndGet();
    }
    for (Entry entry : outcome.entries()) {
      if (entry instanceof Entry.TorqueTaken) {
        events.incrementAndGet();
      } else if (entry instanceof Entry.Refused) {
        refused.incrementAndGet();
      }
    }
  }

  /** Notes that the log was opened; whether it can be written is not known yet. */
  void holding(long size) {
    entries.set(size);
  }

  void recording(long size) {
    holding(size);
    trouble.set(null);
  }

  /** Notes the trouble; true when it is new. */
  boolean failing(String why) {
    return !why.equals(trouble.getAndSet(why));
  }

  void waiting(int more) {
    waiting.addAndGet(more);
  }

  void missed() {
    notKept.incrementAndGet();
  }

  /** Messages that were heard and are not on record yet. */
  public long waiting() {
    return waiting.get();
  }

  /** Messages that were heard, could neither be recorded nor kept, and are not sent again. */
  public long notKept() {
    return notKept.get();
  }

  /** Entries in the log, as of the last commit of this process. */
  public long entries() {
    return entries.get();
  }

  /** Torque events recorded. */
  public long events() {
    return events.get();
  }

  /** Messages recorded as refused. */
  public long refused() {
    return refused.get();
  }

  /** Repeats of events already on record, which are counted and not stored again. */
  public long repeats() {
    return repeats.get();
  }

  /** Why nothing can be recorded; null while all is well. */
  public String trouble() {
    return trouble.get();
  }
}
