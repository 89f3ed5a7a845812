package witnessmark.record;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import witnessmark.entry.Entry;
import witnessmark.job.Released;
import witnessmark.procedure.Procedure;
import witnessmark.wrench.Wrench;

/**
 * All that is on record of one job.
 *
 * @param job its name
 * @param unit the unit's number
 * @param procedure what was asked
 * @param released the entry that released the procedure
 * @param outcome how it ended, or stands
 * @param life the entries by which it was opened, suspended, resumed and ended
 * @param passes every pass of every fastener, by step, then pass, then position
 * @param others readings on a fastener that are judged against no pass of it, such as loosenings
 * @param unplaced readings that count for no fastener
 * @param deviations nonconformities, in the order in which they happened
 * @param gates attest and measure steps in file order
 * @param corrections what persons placed or set aside, and what was read anew, by entry
 * @param missing what was lacking when it ended, or lacks now; a sentence each
 * @param late readings that came after its end
 * @param wrenches every wrench used, once for each calibration it was used under
 * @param unknownWrenches serial numbers of wrenches used that nobody had enrolled
 * @param people every badge named
 * @param foundLater wrenches found out of tolerance after they had been used
 * @param count the entries of the job there are, scans aside, up to its end
 */
public record JobRecord(
    String job,
    String unit,
    Procedure procedure,
    Released released,
    Outcome outcome,
    List<Numbered> life,
    List<PassRecord> passes,
    List<Attempt> others,
    List<Unplaced> unplaced,
    List<Deviation> deviations,
    List<GateRecord> gates,
    List<Numbered> corrections,
    List<String> missing,
    List<Attempt> late,
    List<Wrench> wrenches,
    List<String> unknownWrenches,
    List<Person> people,
    List<OutOfTolerance> foundLater,
    long count) {
  public JobRecord {
    life = List.copyOf(life);
    passes = List.copyOf(passes);
    others = List.copyOf(others);
    unplaced = List.copyOf(unplaced);
    deviations = List.copyOf(deviations);
    gates = List.copyOf(gates);
    corrections = List.copyOf(corrections);
    missing = List.copyOf(missing);
    late = List.copyOf(late);
    wrenches = List.copyOf(wrenches);
    unknownWrenches = List.copyOf(unknownWrenches);
    people = List.copyOf(people);
    foundLater = List.copyOf(foundLater);
  }

  /** How a job ended, or stands. */
  public enum Outcome {
    OPEN,
    SUSPENDED,
    CLOSED,
    ABANDONED;

    public String code() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** Whether nothing can be added to the job. */
    public boolean ended() {
      return this == CLOSED || this == ABANDONED;
    }
  }

  /** How many entries its end says that the job has; empty while it goes on, and in older logs. */
  public OptionalLong told() {
    Entry last = life.get(life.size() - 1).entry();
    if (last instanceof Entry.JobClosed c) {
      return c.entries();
    }
    return last instanceof Entry.JobAbandoned a ? a.entries() : OptionalLong.empty();
  }

  /** Whether every entry of the job up to its end is here; empty where its end does not tell. */
  public Optional<Boolean> whole() {
    return told().isPresent() ? Optional.of(told().getAsLong() == count) : Optional.empty();
  }

  /** Every reading up to its end. */
  public List<Attempt> readings() {
    return Stream.of(
            passes.stream().flatMap(p -> p.attempts().stream()),
            others.stream(),
            unplaced.stream().map(Unplaced::attempt))
        .flatMap(s -> s)
        .toList();
  }

  /** Whether a fastener's name was given by count. */
  public boolean byCount() {
    return readings().stream().anyMatch(Attempt::byCount);
  }

  /** How many passes stand. */
  public long standing() {
    return passes.stream()
        .filter(p -> p.state() == PassRecord.State.STANDS || p.state() == PassRecord.State.CONCEDED)
        .count();
  }
}
