package witnessmark.job;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.entry.Reason;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.WrenchKind;
import witnessmark.wrench.Binding;
import witnessmark.wrench.CalibrationRule;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Uses;
import witnessmark.wrench.Wrench;
import witnessmark.wrench.WrenchClock;

/**
 * All that decisions are made on: the registers, the released procedures and the unfinished jobs.
 *
 * <p>A fold over the log and nothing else. Jobs that ended leave no trace in it, so that it can be
 * rebuilt from the registers' entries and those of the unfinished jobs alone.
 *
 * @param size how many entries it has taken in, which is the next entry's number
 * @param operators by badge
 * @param wrenches by serial number, with all that was ever enrolled
 * @param procedures released revisions, oldest first
 * @param jobs open and suspended jobs by name
 * @param operatorAt who works at a station, by station
 * @param chosen the procedure for the next unit scanned at a station, by station
 * @param clocks what the readings since the start told of the wrenches' clocks, by serial number
 * @param rules how wrenches of a type are calibrated, where the shop made a rule
 * @param uses how much of their newest calibration was used, of wrenches that have one on record
 */
public record Shop(
    long size,
    Map<String, Operator> operators,
    Map<String, Enrolments> wrenches,
    List<Released> procedures,
    Map<String, JobState> jobs,
    Map<String, String> operatorAt,
    Map<String, String> chosen,
    Map<String, WrenchClock> clocks,
    Map<WrenchKind, CalibrationRule> rules,
    Map<String, Uses> uses) {
  /** Before entry 0. */
  public static final Shop EMPTY =
      new Shop(
          0, Map.of(), Map.of(), List.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of(),
          Map.of());

  /** Made-up serial numbers must not fill the memory. */
  private static final int CLOCKS = 1000;

  /** The open job at a station. */
  public Optional<JobState> active(String station) {
    return jobs.values().stream()
        .filter(j -> j.status() == Status.OPEN && j.station().equals(station))
        .findFirst();
  }

  /** The unfinished job that was open at a station at a moment. */
  public Optional<JobState> active(String station, Instant moment) {
    return jobs.values().stream().filter(j -> j.was(station, moment)).findFirst();
  }

  /** What the register says of a wrench for a moment. */
  public Optional<Wrench> wrench(String serial, Instant moment) {
    return Optional.ofNullable(wrenches.get(serial)).map(e -> e.at(moment));
  }

  /**
   * Whether a reading came by a way by which its wrench may report, as was in force when it came. A
   * wrench that nobody bound may report by any.
   */
  public boolean fromItsSource(Entry.TorqueTaken taken) {
    return mayReport(taken.event().wrench(), taken.source(), taken.station(), taken.at());
  }

  /** The same of a reading that is not on record yet. */
  public boolean mayReport(String wrench, String source, String station, Instant at) {
    Enrolments known = wrenches.get(wrench);
    return known == null || known.mayReport(source, station, at);
  }

  /**
   * What is known of the wrench's clock for an event. A counter that begins anew comes with a new
   * battery, and a clock that somebody had to set.
   *
   * @param oddity what is odd about the event's number
   */
  public WrenchClock clock(TorqueEvent event, Optional<String> oddity) {
    WrenchClock known = clocks.getOrDefault(event.wrench(), WrenchClock.UNKNOWN);
    return oddity.isPresent() && known.notCountedOn(event) ? WrenchClock.UNKNOWN : known;
  }

  /** The revision of a procedure. */
  public Optional<Released> released(String procedure, String revision) {
    return procedures.stream()
        .filter(r -> r.procedure().equals(procedure) && r.revision().equals(revision))
        .findFirst();
  }

  /** The revision of a procedure that was released last. */
  public Optional<Released> newest(String procedure) {
    return procedures.stream()
        .filter(r -> r.procedure().equals(procedure))
        .reduce((older, newer) -> newer);
  }

  /** The same shop, counting entries up to a size without their content. */
  public Shop sized(long entries) {
    return new Shop(
        entries, operators, wrenches, procedures, jobs, operatorAt, chosen, clocks, rules, uses);
  }

  /**
   * The shop after entry {@code n}.
   *
   * @throws IllegalStateException when the entry does not fit the state, which means that the log
   *     and this program disagree
   */
  public Shop after(long n, Entry entry) {
    return change(n, entry).sized(n + 1);
  }

  private Shop change(long n, Entry entry) {
    if (entry instanceof Entry.OperatorEnrolled e) {
      Optional<OperatorKey> held =
          Optional.ofNullable(operators.get(e.operator())).flatMap(Operator::key);
      return withOperator(new Operator(e.operator(), e.name(), e.roles(), held));
    } else if (entry instanceof Entry.OperatorKeyEnrolled e) {
      return withOperator(
          operator(e.operator()).holding(Optional.of(new OperatorKey(n, e.publicKey()))));
    } else if (entry instanceof Entry.OperatorKeyWithdrawn e) {
      return withOperator(operator(e.operator()).holding(Optional.empty()));
    } else if (entry instanceof Entry.WrenchBound e) {
      Enrolments bound = enrolments(e.wrench()).bound(new Binding(e.at(), e.sources()));
      return withWrenches(put(wrenches, e.wrench(), bound), rules, uses);
    } else if (entry instanceof Entry.WrenchEnrolled e) {
      return withWrenches(enrolled(wrench(n, e)), rules, without(uses, e.wrench()));
    } else if (entry instanceof Entry.CalibrationRuled e) {
      return withWrenches(wrenches, put(rules, e.type(), rule(e)), uses);
    } else if (entry instanceof Entry.WrenchCalibrated e) {
      return e.leftWithin() ? calibrated(n, e) : this;
    } else if (entry instanceof Entry.CalibrationEnded e) {
      Enrolments ended = enrolments(e.wrench()).ended(e.from());
      return withWrenches(put(wrenches, e.wrench(), ended), rules, uses);
    } else if (entry instanceof Entry.ProcedureReleased e) {
      List<Released> more = new java.util.ArrayList<>(procedures);
      more.add(new Released(e.procedure(), e.revision(), e.text(), e.acknowledged(), n));
      return new Shop(
          size,
          operators,
          wrenches,
          List.copyOf(more),
          jobs,
          operatorAt,
          chosen,
          clocks,
          rules,
          uses);
    } else if (entry instanceof Entry.OperatorAtStation e) {
      return new Shop(
          size,
          operators,
          wrenches,
          procedures,
          jobs,
          put(operatorAt, e.station(), e.operator()),
          chosen,
          clocks,
          rules,
          uses);
    } else if (entry instanceof Entry.JobOpened e) {
      return withJobs(put(jobs, e.job(), open(e)));
    } else if (entry instanceof Entry.JobSuspended e) {
      return job(e.job(), j -> j.suspended(e.at()));
    } else if (entry instanceof Entry.JobResumed e) {
      return job(e.job(), j -> j.resumed(e.station(), e.at()));
    } else if (entry instanceof Entry.JobClosed e) {
      return job(e.job(), j -> null);
    } else if (entry instanceof Entry.JobAbandoned e) {
      return job(e.job(), j -> null);
    } else if (entry instanceof Entry.Attested e) {
      return job(e.job(), j -> History.with(j, Act.of(n, e)));
    } else if (entry instanceof Entry.Measured e) {
      return job(e.job(), j -> History.with(j, Act.of(n, e)));
    } else if (entry instanceof Entry.Disposed e) {
      return job(e.job(), j -> History.with(j, Act.of(n, e)));
    } else if (entry instanceof Entry.Assigned e) {
      return job(e.job(), j -> JobFold.assigned(j, e));
    } else if (entry instanceof Entry.SetAside e) {
      return job(e.job(), j -> j.settling(e.sets()));
    } else if (entry instanceof Entry.Reread e) {
      return job(e.job(), j -> JobFold.reread(j, e));
    } else if (entry instanceof Entry.TorqueTaken e) {
      return timed(e).used(e.event().wrench()).torque(n, e);
    } else if (entry instanceof Entry.Scan e) {
      return scanned(e);
    } else if (entry instanceof Entry.LogOpened
        || entry instanceof Entry.LogKeyChanged
        || entry instanceof Entry.WrenchChecked
        || entry instanceof Entry.Refused
        || entry instanceof Entry.NotKept) {
      return this;
    }
    throw new IllegalStateException("no fold for " + entry.getClass());
  }

  /** How wrenches of a type are calibrated. */
  public CalibrationRule rule(WrenchKind kind) {
    return rules.getOrDefault(kind, CalibrationRule.usual(kind));
  }

  /**
   * The same shop, with the readings counted that are on record after each wrench's newest
   * calibration.
   */
  public Shop counted(Map<String, Long> readings) {
    Map<String, Uses> counted = new TreeMap<>();
    uses.forEach((w, u) -> counted.put(w, u.counted(readings.getOrDefault(w, 0L))));
    return withWrenches(wrenches, rules, java.util.Collections.unmodifiableMap(counted));
  }

  private Shop calibrated(long n, Entry.WrenchCalibrated e) {
    Wrench wrench = enrolments(e.wrench()).newest().calibrated(n, e);
    return withWrenches(
        enrolled(wrench), rules, put(uses, e.wrench(), new Uses(e.operations(), e.used(), 0)));
  }

  private Shop used(String wrench) {
    Uses before = uses.get(wrench);
    return before == null ? this : withWrenches(wrenches, rules, put(uses, wrench, before.once()));
  }

  private Operator operator(String badge) {
    Operator found = operators.get(badge);
    if (found == null) {
      throw new IllegalStateException("an entry is about a key of " + badge + ", not enrolled");
    }
    return found;
  }

  private Shop withOperator(Operator operator) {
    return new Shop(
        size,
        put(operators, operator.badge(), operator),
        wrenches,
        procedures,
        jobs,
        operatorAt,
        chosen,
        clocks,
        rules,
        uses);
  }

  private Enrolments enrolments(String serial) {
    Enrolments found = wrenches.get(serial);
    if (found == null) {
      throw new IllegalStateException(
          "an entry is about wrench " + serial + ", which is not enrolled");
    }
    return found;
  }

  private Shop withWrenches(
      Map<String, Enrolments> wrenches,
      Map<WrenchKind, CalibrationRule> rules,
      Map<String, Uses> uses) {
    return new Shop(
        size, operators, wrenches, procedures, jobs, operatorAt, chosen, clocks, rules, uses);
  }

  private static CalibrationRule rule(Entry.CalibrationRuled e) {
    return new CalibrationRule(
        e.deviation(),
        e.smallUpTo(),
        e.smallDeviation(),
        e.points(),
        e.readings(),
        e.months(),
        e.operations());
  }

  private Shop torque(long n, Entry.TorqueTaken e) {
    boolean finding = e.judged().reason() == Reason.LATE_FOR_ENDED_JOB;
    return e.job()
        .filter(name -> !finding)
        .map(name -> job(name, j -> JobFold.torque(j, n, e)))
        .orElse(this);
  }

  /**
   * A time that was not believed tells nothing of the clock; it may be the reading's alone. One
   * that another may have sent in the wrench's name tells nothing either.
   */
  private Shop timed(Entry.TorqueTaken e) {
    if (!e.timing().byWrench() || !fromItsSource(e)) {
      return this;
    }
    WrenchClock clock = clock(e.event(), e.timing().counter());
    WrenchClock heard = clock.heard(e.event(), e.at(), e.timing().stored().orElse(false));
    Map<String, WrenchClock> heardClocks =
        clocks.size() >= CLOCKS && !clocks.containsKey(e.event().wrench()) ? Map.of() : clocks;
    return new Shop(
        size,
        operators,
        wrenches,
        procedures,
        jobs,
        operatorAt,
        chosen,
        put(heardClocks, e.event().wrench(), heard),
        rules,
        uses);
  }

  /**
   * A scan that opens a job comes before it, and one that is kept for its procedure may outlive its
   * job; so a job that is not there is none of its concern.
   */
  private Shop scanned(Entry.Scan e) {
    Shop told = e.procedure().map(p -> withChosen(e, p)).orElse(this);
    return e.job()
        .filter(jobs::containsKey)
        .map(name -> told.withJob(name, JobFold.scanned(jobs.get(name), e)))
        .orElse(told);
  }

  private Shop withChosen(Entry.Scan e, String procedure) {
    Map<String, String> changed = new TreeMap<>(chosen);
    if (e.meaning() == Meaning.PROCEDURE) {
      changed.put(e.station(), procedure);
    } else {
      changed.remove(e.station());
    }
    return new Shop(
        size,
        operators,
        wrenches,
        procedures,
        jobs,
        operatorAt,
        java.util.Collections.unmodifiableMap(changed),
        clocks,
        rules,
        uses);
  }

  private JobState open(Entry.JobOpened e) {
    Released released =
        released(e.procedure(), e.revision())
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "job "
                            + e.job()
                            + " follows "
                            + e.procedure()
                            + ", which is not released"));
    return JobState.opened(e.job(), e.unit(), e.station(), new Plan(released.parse()), e.at());
  }

  private Map<String, Enrolments> enrolled(Wrench wrench) {
    Enrolments before = wrenches.get(wrench.serial());
    return put(
        wrenches, wrench.serial(), before == null ? Enrolments.of(wrench) : before.and(wrench));
  }

  private static Wrench wrench(long n, Entry.WrenchEnrolled e) {
    return new Wrench(
        e.wrench(),
        e.low(),
        e.high(),
        e.calibrated(),
        e.due(),
        e.certificate(),
        e.uncertainty(),
        e.resolution(),
        e.type().orElse(WrenchKind.INDICATING),
        e.angle().orElse(true),
        n);
  }

  private Shop job(String name, UnaryOperator<JobState> change) {
    JobState before = jobs.get(name);
    if (before == null) {
      throw new IllegalStateException("an entry is about job " + name + ", which is not open");
    }
    JobState after = change.apply(before);
    return withJob(name, after == null ? null : after.counted(before.entries() + 1));
  }

  private Shop withJob(String name, JobState after) {
    Map<String, JobState> changed = new HashMap<>(jobs);
    if (after == null) {
      changed.remove(name);
    } else {
      changed.put(name, after);
    }
    return withJobs(Map.copyOf(changed));
  }

  private Shop withJobs(Map<String, JobState> changed) {
    return new Shop(
        size, operators, wrenches, procedures, changed, operatorAt, chosen, clocks, rules, uses);
  }

  private static <K, V> Map<K, V> without(Map<K, V> map, K key) {
    Map<K, V> copy = new TreeMap<>(map);
    copy.remove(key);
    return java.util.Collections.unmodifiableMap(copy);
  }

  private static <K, V> Map<K, V> put(Map<K, V> map, K key, V value) {
    Map<K, V> copy = new TreeMap<>(map);
    copy.put(key, value);
    return java.util.Collections.unmodifiableMap(copy);
  }
}
