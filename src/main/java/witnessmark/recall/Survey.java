package witnessmark.recall;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
import witnessmark.ledger.Reading.Query;
import witnessmark.procedure.Criticality;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Torque;

/** Reads from the log what a recall of one wrench is computed from. */
public final class Survey {
  private final Reading reading;
  private final String wrench;
  private final Map<String, Map<String, Criticality>> procedures = new HashMap<>();

  public Survey(Reading reading, String wrench) {
    this.reading = reading;
    this.wrench = wrench;
  }

  /** How the wrench was found last, or by an entry. */
  public Optional<Finding> finding(OptionalLong entry) {
    SortedMap<Long, Entry> about = new TreeMap<>();
    for (String kind : List.of("wrench-enrolled", "wrench-calibrated", "wrench-checked")) {
      reading.find(
          query(Optional.of(wrench), Optional.of(kind), Optional.empty()),
          s -> about.put(s.n(), EntryJson.read(s.bytes())));
    }
    return Finding.of(about, entry);
  }

  /** The recall by a finding. */
  public Recall recall(Finding finding) {
    Set<String> jobs = new LinkedHashSet<>();
    Map<Long, Long> orders = orders(finding, jobs);
    Span span = finding.span(Math.max(1, orders.size()));
    List<Rejudged> joints = new ArrayList<>();
    for (String job : jobs) {
      touches(job, orders).forEach(t -> joints.add(Rejudged.of(t, span)));
    }
    joints.sort(Rejudged.FIRST);
    return new Recall(wrench, finding, orders.size(), joints);
  }

  /** The readings in question, numbered in the order in which they happened. */
  private Map<Long, Long> orders(Finding finding, Set<String> jobs) {
    record Taken(long n, Entry.TorqueTaken event) {}

    List<Taken> readings = new ArrayList<>();
    reading.find(
        query(Optional.of(wrench), Optional.of("torque"), Optional.empty()),
        s -> {
          Entry.TorqueTaken taken = (Entry.TorqueTaken) EntryJson.read(s.bytes());
          if (!taken.moment().isBefore(finding.from()) && taken.moment().isBefore(finding.to())) {
            readings.add(new Taken(s.n(), taken));
            taken.job().ifPresent(jobs::add);
          }
        });
    readings.sort(
        java.util.Comparator.comparing((Taken t) -> t.event().moment()).thenComparing(Taken::n));
    Map<Long, Long> orders = new HashMap<>();
    readings.forEach(t -> orders.put(t.n(), orders.size() + 1L));
    reading.find(
        query(Optional.empty(), Optional.of("assigned"), Optional.empty()),
        s -> {
          Entry.Assigned assigned = (Entry.Assigned) EntryJson.read(s.bytes());
          if (orders.containsKey(assigned.assigns())) {
            jobs.add(assigned.job());
          }
        });
    return orders;
  }

  private List<Touch> touches(String job, Map<Long, Long> orders) {
    JobRow row = reading.jobs(Optional.empty(), Optional.of(job), false).get(0);
    Standing standing = new Standing();
    reading.find(
        query(Optional.empty(), Optional.empty(), Optional.of(job)),
        s -> standing.take(s.n(), EntryJson.read(s.bytes())));
    standing
        .missing()
        .forEach(
            n ->
                reading
                    .entry(n)
                    .map(s -> (Entry.TorqueTaken) EntryJson.read(s.bytes()))
                    .ifPresent(e -> standing.outside(n, e)));
    Map<String, Criticality> steps =
        procedures.computeIfAbsent(row.procedure() + "\n" + row.revision(), k -> steps(row));
    return standing.readings().stream()
        .filter(r -> orders.containsKey(r.n()))
        .map(r -> touch(row, r, steps, orders.get(r.n())))
        .toList();
  }

  private static Touch touch(
      JobRow row, Standing.Reading reading, Map<String, Criticality> steps, long order) {
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
        order);
  }

  private Map<String, Criticality> steps(JobRow row) {
    Entry.JobOpened opened =
        (Entry.JobOpened) EntryJson.read(reading.entry(row.opened()).orElseThrow().bytes());
    Entry.ProcedureReleased released =
        (Entry.ProcedureReleased)
            EntryJson.read(reading.entry(opened.released()).orElseThrow().bytes());
    Procedure procedure = ProcedureFile.parse(row.procedure(), released.text());
    Map<String, Criticality> steps = new HashMap<>();
    procedure.steps().stream()
        .filter(TightenStep.class::isInstance)
        .map(TightenStep.class::cast)
        .forEach(s -> steps.put(s.id(), s.criticality()));
    return steps;
  }

  private static Query query(Optional<String> wrench, Optional<String> kind, Optional<String> job) {
    Optional<String> any = Optional.empty();
    return new Query(any, job, any, any, wrench, any, any, kind, any, any, any);
  }
}
