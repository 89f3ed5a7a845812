package witnessmark.record;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Role;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.Stored;

/**
 * Reads from the log the entries that the record of a unit follows from: those of its jobs, scans
 * aside, the readings that a person placed in them, and of the registers what concerns their
 * wrenches and people, with the keys by which these, who enrolled them, and quality decide: of the
 * wrenches up to the end of the log, since one may be found wrong after the jobs.
 */
public final class Gather {
  /** Kinds that tell of a wrench or a person, for all jobs. */
  private static final List<String> REGISTERS =
      List.of(
          "operator-enrolled",
          "operator-key-enrolled",
          "operator-key-withdrawn",
          "wrench-enrolled",
          "wrench-calibrated",
          "calibration-ended");

  private final Reading reading;
  private final SortedMap<Long, byte[]> bytes = new TreeMap<>();
  private final SortedMap<Long, Entry> entries = new TreeMap<>();

  private Gather(Reading reading) {
    this.reading = reading;
  }

  /**
   * The exact bytes of the entries by number; none where there is no such job.
   *
   * @param job only that job
   */
  public static SortedMap<Long, byte[]> of(
      Reading reading, Optional<String> unit, Optional<String> job) {
    Gather gather = new Gather(reading);
    List<JobRow> jobs = reading.jobs(unit, job, false);
    jobs.forEach(gather::job);
    if (!jobs.isEmpty()) {
      gather.registers();
    }
    return gather.bytes;
  }

  /** The entries of those bytes. */
  public static SortedMap<Long, Entry> read(SortedMap<Long, byte[]> bytes) {
    SortedMap<Long, Entry> entries = new TreeMap<>();
    bytes.forEach((n, b) -> entries.put(n, EntryJson.read(b)));
    return entries;
  }

  private void job(JobRow row) {
    Optional<String> any = Optional.empty();
    Optional<String> job = Optional.of(row.job());
    reading.find(new Query(any, job, any, any, any, any, any, any, any, any, any), this::add);
    for (Entry entry : List.copyOf(entries.values())) {
      if (entry instanceof Entry.Assigned a && !entries.containsKey(a.assigns())) {
        reading.entry(a.assigns()).ifPresent(this::add);
      } else if (entry instanceof Entry.JobOpened o && !entries.containsKey(o.released())) {
        reading.entry(o.released()).ifPresent(this::add);
      }
    }
  }

  private void add(Stored stored) {
    Entry entry = EntryJson.read(stored.bytes());
    if (!(entry instanceof Entry.Scan)) {
      entries.put(stored.n(), entry);
      bytes.put(stored.n(), stored.bytes());
    }
  }

  private void registers() {
    List<Stored> registers = reading.registers(REGISTERS, reading.size());
    wrenches(registers);
    Set<String> badges = new TreeSet<>(keyedQuality(registers));
    entries.values().forEach(e -> people(e, badges));
    long last = entries.lastKey();
    // Who enrolled them, with which key, was enrolled, too.
    for (int before = -1; before < badges.size(); ) {
      before = badges.size();
      for (Stored stored : registers) {
        Entry entry = EntryJson.read(stored.bytes());
        if (stored.n() < last && ofPerson(entry, badges)) {
          add(stored);
          people(entry, badges);
        }
      }
    }
  }

  private void wrenches(List<Stored> registers) {
    Set<String> wrenches = new TreeSet<>();
    for (Entry entry : entries.values()) {
      if (entry instanceof Entry.TorqueTaken t) {
        wrenches.add(t.event().wrench());
      }
    }
    for (Stored stored : registers) {
      Entry entry = EntryJson.read(stored.bytes());
      if (entry instanceof Entry.WrenchEnrolled w && wrenches.contains(w.wrench())
          || entry instanceof Entry.WrenchCalibrated c && wrenches.contains(c.wrench())
          || entry instanceof Entry.CalibrationEnded d && wrenches.contains(d.wrench())) {
        add(stored);
      }
    }
  }

  /** Badges of quality that ever held a key: since then, others decide with keys only. */
  private static Set<String> keyedQuality(List<Stored> registers) {
    Set<String> quality = new TreeSet<>();
    Set<String> keyed = new TreeSet<>();
    for (Stored stored : registers) {
      Entry entry = EntryJson.read(stored.bytes());
      if (entry instanceof Entry.OperatorEnrolled o && o.roles().contains(Role.QUALITY)) {
        quality.add(o.operator());
      } else if (entry instanceof Entry.OperatorKeyEnrolled k) {
        keyed.add(k.operator());
      }
    }
    quality.retainAll(keyed);
    return quality;
  }

  /** Who did what the entry says. */
  private static void people(Entry entry, Set<String> badges) {
    ByWhom.of(entry).or(() -> ByWhom.registered(entry)).ifPresent(badges::add);
    if (entry instanceof Entry.TorqueTaken t) {
      t.event().operator().or(t::operator).ifPresent(badges::add);
    }
  }

  private static boolean ofPerson(Entry entry, Set<String> badges) {
    return entry instanceof Entry.OperatorEnrolled o && badges.contains(o.operator())
        || entry instanceof Entry.OperatorKeyEnrolled k && badges.contains(k.operator())
        || entry instanceof Entry.OperatorKeyWithdrawn w && badges.contains(w.operator());
  }
}
