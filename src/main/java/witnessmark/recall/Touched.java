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
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
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
  private final Map<Long, Map<String, Criticality>> procedures = new HashMap<>();
  private final List<Taken> taken = new ArrayList<>();
  private final List<Touch> touches = new ArrayList<>();

  /** An entry and its number. */
  record Noted(long n, Entry entry) {}

  private record Taken(Instant moment, long n) {}

  Touched(Reading reading, String wrench, Finding finding) {
    this.reading = reading;
    this.wrench = wrench;
    this.finding = finding;
  }

  /** Takes in the next entry. */
  void take(Noted noted) {
    Entry entry = noted.entry();
    if (entry instanceof Entry.TorqueTaken e) {
      if (inQuestion(e)) {
        taken.add(new Taken(e.moment(), noted.n()));
      }
      e.job().ifPresent(job -> standing(job).take(noted.n(), entry));
    } else if (entry instanceof Entry.Assigned e) {
      standing(e.job()).take(noted.n(), entry);
    } else if (entry instanceof Entry.Reread e) {
      standing(e.job()).take(noted.n(), entry);
    } else if (entry instanceof Entry.SetAside e) {
      standing(e.job()).take(noted.n(), entry);
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
    taken.sort(Comparator.comparing(Taken::moment).thenComparing(Taken::n));
    Map<Long, Long> orders = new HashMap<>(2 * taken.size());
    taken.forEach(t -> orders.put(t.n(), orders.size() + 1L));
    return touches.stream().map(t -> t.inOrder(orders.get(t.entry()))).toList();
  }

  private boolean inQuestion(Entry.TorqueTaken e) {
    return e.event().wrench().equals(wrench)
        && !e.moment().isBefore(finding.from())
        && e.moment().isBefore(finding.to());
  }

  private Standing standing(String job) {
    return jobs.computeIfAbsent(job, j -> new Standing());
  }

  private void ended(String job) {
    Standing standing = jobs.remove(job);
    if (standing == null) {
      return;
    }
    standing.missing().forEach(n -> standing.outside(n, torque(n)));
    List<Standing.Reading> mine =
        standing.readings().stream().filter(r -> inQuestion(r.event())).toList();
    if (!mine.isEmpty()) {
      JobRow row = reading.jobs(Optional.empty(), Optional.of(job), false).get(0);
      Map<String, Criticality> steps = steps(row);
      mine.forEach(r -> touches.add(touch(row, r, steps)));
    }
  }

  private Entry.TorqueTaken torque(long n) {
    return (Entry.TorqueTaken) entry(n);
  }

  private Entry entry(long n) {
    return EntryJson.read(reading.entry(n).orElseThrow().bytes());
  }

  private Map<String, Criticality> steps(JobRow row) {
    Entry.JobOpened opened = (Entry.JobOpened) entry(row.opened());
    return procedures.computeIfAbsent(opened.released(), this::steps);
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

  private static Touch touch(JobRow row, Standing.Reading reading, Map<String, Criticality> steps) {
    String fastener = reading.judged().fastener().orElseThrow();
    Torque indicated = reading.event().event().torque();
    return new Touch(
        row.unit(),
        row.job(),
        fastener,
        reading.judged().pass().orElse(""),
        steps.get(fastener.substring(0, fastener.lastIndexOf('/'))),
        reading.n(),
        reading.event().moment(),
        indicated,
        reading.judged().atFastener().map(Torque::parse).orElse(indicated),
        Torque.parse(reading.judged().low().orElseThrow()),
        Torque.parse(reading.judged().high().orElseThrow()),
        0);
  }
}
