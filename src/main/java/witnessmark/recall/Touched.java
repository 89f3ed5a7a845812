package witnessmark.recall;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Gist;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
import witnessmark.ledger.Stored;
import witnessmark.procedure.Criticality;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Torque;

/**
 * What a wrench touched, gathered entry by entry. A job is kept only until it ends, so that memory
 * grows with the joints that are found and not with the log.
 */
final class Touched {
  private final Reading reading;
  private final String wrench;
  private final Finding finding;
  private final Map<String, Standing> jobs = new HashMap<>();
  private final Map<String, Entry.JobOpened> opened = new HashMap<>();
  private final Map<String, Torque> limits = new HashMap<>();
  private final Map<Long, Map<String, Criticality>> procedures = new HashMap<>();
  private final List<Taken> taken = new ArrayList<>();
  private final List<Touch> touches = new ArrayList<>();

  /** An entry and its number: the gist of a torque event, or any other as it is. */
  record Noted(long n, Optional<Gist> reading, Optional<Entry> other) {
    static Noted of(Stored stored) {
      Optional<Gist> reading = Gist.read(stored.bytes());
      return new Noted(
          stored.n(),
          reading,
          reading.isPresent() ? Optional.empty() : Optional.of(EntryJson.read(stored.bytes())));
    }
  }

  private record Taken(Instant moment, long n) {}

  Touched(Reading reading, String wrench, Finding finding) {
    this.reading = reading;
    this.wrench = wrench;
    this.finding = finding;
  }

  /** Takes in the next entry. */
  void take(Noted noted) {
    noted.reading().ifPresent(r -> take(noted.n(), r));
    noted.other().ifPresent(this::take);
  }

  private void take(long n, Gist reading) {
    if (inQuestion(reading)) {
      taken.add(new Taken(reading.moment(), n));
    }
    reading.job().ifPresent(job -> standing(job).take(n, reading));
  }

  private void take(Entry entry) {
    if (entry instanceof Entry.JobOpened e) {
      opened.put(e.job(), e);
    } else if (entry instanceof Entry.Assigned e) {
      standing(e.job()).take(entry);
    } else if (entry instanceof Entry.Reread e) {
      standing(e.job()).take(entry);
    } else if (entry instanceof Entry.SetAside e) {
      standing(e.job()).take(entry);
    } else if (entry instanceof Entry.JobClosed e) {
      ended(e.job());
    } else if (entry instanceof Entry.JobAbandoned e) {
      ended(e.job());
    }
  }

  /** How many readings the wrench took in the time in question. */
  long readings() {
    return taken.size();
  }

  /** The readings in question by which joints stand, once all entries are taken in. */
  List<Touch> touches() {
    List.copyOf(jobs.keySet()).forEach(this::ended);
    Orders orders = orders();
    return touches.stream().map(t -> t.inOrder(orders.of(t.entry()))).toList();
  }

  private Orders orders() {
    long[] byMoment =
        taken.stream()
            .sorted(Comparator.comparing(Taken::moment).thenComparing(Taken::n))
            .mapToLong(Taken::n)
            .toArray();
    return new Orders(byMoment);
  }

  private boolean inQuestion(Gist e) {
    return e.wrench().equals(wrench)
        && !e.moment().isBefore(finding.from())
        && e.moment().isBefore(finding.to());
  }

  private Standing standing(String job) {
    return jobs.computeIfAbsent(job, j -> new Standing());
  }

  private void ended(String name) {
    Standing standing = jobs.remove(name);
    Entry.JobOpened known = opened.remove(name);
    if (standing == null) {
      return;
    }
    standing.missing().forEach(n -> standing.outside(n, gist(n)));
    List<Standing.Reading> mine =
        standing.readings().stream().filter(r -> inQuestion(r.event())).toList();
    if (!mine.isEmpty()) {
      Entry.JobOpened job = known == null ? openedBefore(name) : known;
      Map<String, Criticality> steps = procedures.computeIfAbsent(job.released(), this::steps);
      mine.forEach(r -> touches.add(touch(job, r, steps)));
    }
  }

  /** Of a job that was open before the time in question began. */
  private Entry.JobOpened openedBefore(String job) {
    JobRow row = reading.jobs(Optional.empty(), Optional.of(job), false).get(0);
    return (Entry.JobOpened) entry(row.opened());
  }

  private Gist gist(long n) {
    return Gist.of((Entry.TorqueTaken) entry(n));
  }

  private Entry entry(long n) {
    return EntryJson.read(reading.entry(n).orElseThrow().bytes());
  }

  private Map<String, Criticality> steps(long released) {
    Entry.ProcedureReleased procedure = (Entry.ProcedureReleased) entry(released);
    Map<String, Criticality> steps = new HashMap<>();
    ProcedureFile.parse(procedure.procedure(), procedure.text()).steps().stream()
        .filter(TightenStep.class::isInstance)
        .map(TightenStep.class::cast)
        .forEach(s -> steps.put(s.id(), s.criticality()));
    return steps;
  }

  private Touch touch(
      Entry.JobOpened job, Standing.Reading reading, Map<String, Criticality> steps) {
    String fastener = reading.placed().fastener().orElseThrow();
    Torque indicated = reading.event().torque();
    return new Touch(
        job.unit(),
        job.job(),
        fastener,
        reading.placed().pass().orElse(""),
        steps.get(fastener.substring(0, fastener.lastIndexOf('/'))),
        reading.n(),
        reading.event().moment(),
        indicated,
        reading.placed().atFastener().map(Torque::parse).orElse(indicated),
        limit(reading.placed().low()),
        limit(reading.placed().high()),
        0);
  }

  /** Joints have few limits between them: each is made once. */
  private Torque limit(Optional<String> text) {
    return limits.computeIfAbsent(text.orElseThrow(), Torque::parse);
  }
}
