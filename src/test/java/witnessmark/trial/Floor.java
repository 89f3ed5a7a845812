package witnessmark.trial;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import witnessmark.decode.Decoded;
import witnessmark.decode.Messages;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Assign;
import witnessmark.desk.Attest;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Command;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.Measure;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.job.Act;
import witnessmark.job.Due;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.pipeline.Arrival;
import witnessmark.pipeline.ListLog;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Step;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.Stage;
import witnessmark.publish.Told;
import witnessmark.torque.Digits;
import witnessmark.torque.Verdict;
import wrenchsim.joint.JointState;
import wrenchsim.shop.Answer;
import wrenchsim.shop.Chance;
import wrenchsim.shop.Deed;
import wrenchsim.shop.Message;
import wrenchsim.shop.Mistakes;
import wrenchsim.shop.Pace;
import wrenchsim.shop.Parts;
import wrenchsim.shop.Person;
import wrenchsim.shop.Rack;
import wrenchsim.shop.ShopClock;
import wrenchsim.shop.Station;
import wrenchsim.shop.Tool;
import wrenchsim.truth.Happening;
import wrenchsim.wire.MalformedMessage;
import wrenchsim.wire.TorqueMessage;
import wrenchsim.wrench.Wrench;
import wrenchsim.wrench.WrenchSpec;

/**
 * One bench of the simulator's shop against the bridge's core, in one thread, by the published
 * messages alone: the core gets the bytes that a broker would bring, the bench those that a bridge
 * would publish. Nothing is on a disk or a wire.
 */
final class Floor {
  private static final Instant START = Instant.parse("2026-11-25T08:00:00Z");
  private static final String STATION = "bench-1";
  private static final String BADGE = "badge-07";
  private static final int LONGEST = 300;

  private final Scene scene;
  private final ListLog log = new ListLog();
  private final Map<String, Happening> truth = new HashMap<>();
  private final Map<Long, Happening> about = new HashMap<>();
  private final Set<Long> asked = new HashSet<>();
  private final Set<Happening> outOfTurn = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Set<String> settledOnes = new HashSet<>();
  private final Map<Long, Judged> first = new HashMap<>();
  private final Parts parts;
  private final ShopClock clock = new ShopClock(Optional.of(START), Pace.FAST);
  private final Station station;
  private final Tally tally = new Tally();
  private final String procedure;
  private Shop shop = Shop.EMPTY;

  Floor(Scene scene, long seed) {
    this.scene = scene;
    Procedure released = ProcedureFile.parse("trial.toml", scene.procedure());
    parts = new Parts(seed, scene.usual(), scene.joints());
    List<Tool> tools = new ArrayList<>();
    for (WrenchSpec spec : scene.wrenches()) {
      tools.add(new Tool(new Wrench(spec, START, Chance.of(seed, spec.serial())), seed));
    }
    Mistakes mistakes = new Mistakes(scene.mistakes(), Chance.of(seed, "mistakes"));
    station =
        new Station(
            new Person(
                new Rack(tools),
                parts,
                clock,
                mistakes,
                scene.habits(),
                Known.sheets(released),
                seed,
                warning -> {}),
            parts);
    record(new Entry.LogOpened(START, "witnessmark.local/log/trial"));
    Crew.enrol(scene).forEach(this::person);
    person(new Release(released, scene.procedure(), Optional.empty()));
    procedure = released.id();
  }

  /** Works off jobs one after another. */
  Tally work(int jobs) throws MalformedMessage {
    for (int i = 1; i <= jobs; i++) {
      job(String.format("ATR-26-%05d", i));
    }
    return tally;
  }

  private void job(String unit) throws MalformedMessage {
    person(new OpenJob(procedure, Optional.empty(), unit, STATION, Optional.of(BADGE)));
    String job = shop.active(STATION).orElseThrow().job();
    tally.jobs++;
    expect();
    boolean moving = true;
    for (int i = 0; i < LONGEST && moving; i++) {
      Optional<Deed> deed = station.act();
      deed.ifPresent(d -> send(d));
      boolean spoke = speak(job);
      expect();
      moving = deed.isPresent() || spoke;
    }
    judge(job);
    Map<String, String> loose = notTight(shop.jobs().get(job), unit);
    if (shop.jobs().get(job).complete()) {
      person(new CloseJob(job, Optional.of(BADGE)));
      tally.closed++;
      if (loose.containsValue("untouched") || loose.containsValue("loosened")) {
        tally.closedLoose++;
      }
      if (!loose.isEmpty()) {
        tally.example(scene.title() + ": closed with " + loose);
      }
    } else {
      tally.example(scene.title() + ": given up: " + Due.of(shop.jobs().get(job)).text());
      person(new AbandonJob(job, Optional.of(BADGE), "nobody knows how to go on"));
      tally.abandoned++;
    }
    station.ship(unit);
    expect();
  }

  /** What really stands of the fasteners that are not tight. */
  private Map<String, String> notTight(JobState state, String unit) {
    Map<String, JointState> states = parts.states(unit);
    Map<String, String> loose = new TreeMap<>();
    for (int f = 0; f < state.plan().fasteners(); f++) {
      String name = state.plan().name(f);
      JointState is = states.get(name);
      if (is != JointState.TIGHT) {
        loose.put(name, is == null || is == JointState.LOOSE ? "untouched" : is.word());
      }
    }
    return loose;
  }

  private void expect() throws MalformedMessage {
    station.hearExpect(Told.expect(STATION, shop.active(STATION)));
  }

  private void send(Deed deed) {
    for (Happening h : deed.truth()) {
      if (h.act() != Happening.Act.REDELIVER) {
        truth.put(raw(TorqueMessage.encode(h.reading())), h);
        if (besideASpoiledOne(h)) {
          outOfTurn.add(h);
        }
      }
    }
    for (Message message : deed.messages()) {
      boolean torque = message instanceof Message.Torque;
      List<Decoded> all =
          torque ? Messages.torque(message.bytes()) : Messages.scan(message.bytes());
      for (Decoded decoded : all) {
        take(
            new Arrival(
                Optional.of(STATION), "trial", clock.now(), false, all.size() > 1, decoded));
      }
    }
  }

  /** Whether another of its group is overtightened: the order of work waits for a decision then. */
  private boolean besideASpoiledOne(Happening h) {
    String place = h.work().fastener().orElse("");
    return parts.states(h.work().unit().orElse("")).entrySet().stream()
        .filter(e -> e.getValue() == JointState.OVERTIGHTENED && !e.getKey().equals(place))
        .anyMatch(e -> Happened.step(e.getKey()).equals(Happened.step(place)));
  }

  private void take(Arrival arrival) {
    Outcome outcome = Step.take(shop, arrival, log);
    if (outcome.repeat()) {
      tally.count(Happened.REPEAT, Recorded.COUNTED);
    }
    outcome.entries().forEach(this::record);
  }

  private static String raw(byte[] bytes) {
    return new String(bytes, java.nio.charset.StandardCharsets.UTF_8);
  }

  private void person(Command command) {
    command.decide(shop, clock.now()).forEach(this::record);
  }

  private void record(Entry entry) {
    long n = log.append(entry);
    shop = shop.after(n, entry);
    try {
      if (entry instanceof Entry.TorqueTaken t) {
        tally.readings++;
        first.put(n, t.judged());
        Happening h = truth.remove(t.raw());
        if (h == null) {
          throw new IllegalStateException("nobody did what is on record: " + t.raw());
        }
        about.put(n, h);
        if (Recorded.asks(t.judged())) {
          asked.add(n);
        }
        station.hearVerdict(Told.verdict(n, t));
      } else if (entry instanceof Entry.Assigned a) {
        station.hearVerdict(Told.verdict(n, a, log.torque(a.assigns())));
      } else if (entry instanceof Entry.Reread r) {
        tally.rereads++;
        if (Recorded.asks(r.judged())) {
          asked.add(r.rereads());
        }
        station.hearVerdict(Told.verdict(n, r, log.torque(r.rereads())));
      }
    } catch (MalformedMessage e) {
      throw new IllegalStateException("the bench does not understand the bridge", e);
    }
  }

  /** What people do without a wrench; whether anything was done. */
  private boolean speak(String job) {
    boolean spoke = false;
    for (Answer answer : station.answers()) {
      spoke |= tried(assign(job, answer.entry(), Optional.of(answer.fastener())));
    }
    JobState state = shop.jobs().get(job);
    Due due = Due.of(state);
    if (!due.nonconforming().isEmpty()) {
      String fastener = state.plan().name(due.nonconforming().get(0));
      return spoke
          | tried(new Dispose(job, fastener, Disposition.REPLACE, Crew.QUALITY, "new bolt"));
    }
    for (long question : due.questions()) {
      Happening h = about.get(question);
      spoke |=
          tried(assign(job, question, h.work().fastener()))
              || tried(assign(job, question, Optional.empty()));
    }
    for (Stage stage : due.stages()) {
      if (stage.step() instanceof AttestStep a) {
        spoke |= tried(new Attest(job, a.id(), BADGE));
      } else if (stage.step() instanceof MeasureStep m) {
        List<Digits> values = m.labels().stream().map(l -> m.low()).toList();
        spoke |= tried(new Measure(job, m.id(), values, BADGE));
      }
    }
    return spoke;
  }

  private Command assign(String job, long n, Optional<String> fastener) {
    return new Assign(n, log.torque(n), job, fastener, BADGE, "I was there");
  }

  private boolean tried(Command command) {
    try {
      person(command);
      return true;
    } catch (Declined e) {
      return false;
    }
  }

  /** Compares the job's record with what was done. */
  private void judge(String job) {
    Set<Long> inJob = new HashSet<>();
    Map<String, String> credited = new HashMap<>();
    for (Act act : History.all(shop.jobs().get(job))) {
      undoes(act).forEach(stage -> credited.keySet().removeIf(c -> belongs(c, stage)));
      if (about.containsKey(act.n())) {
        inJob.add(act.n());
        count(act.n(), act.judged().orElseThrow(), credited);
      }
    }
    for (long n : List.copyOf(about.keySet())) {
      if (!inJob.contains(n)) {
        count(n, first.get(n), credited);
      }
      about.remove(n);
      first.remove(n);
    }
    asked.clear();
  }

  private static List<String> undoes(Act act) {
    return act.entry() instanceof Entry.Disposed d
        ? d.undoes()
        : act.judged().map(Judged::undoes).orElse(List.of());
  }

  /** Whether a credit, as {@code hub/3 final}, is one of a stage, as {@code hub:final}. */
  private static boolean belongs(String credit, String stage) {
    return (Happened.step(credit) + ":" + credit.substring(credit.indexOf(' ') + 1)).equals(stage);
  }

  /** Keeps the account of credits; whether the bolt has one for that pass already. */
  private static boolean stands(Happening h, Judged judged, Map<String, String> credited) {
    String place = h.work().fastener().orElse("") + " ";
    if (h.act() == Happening.Act.LOOSEN) {
      credited.keySet().removeIf(c -> c.startsWith(place));
    }
    String recorded = judged.fastener().orElse("");
    if (judged.effect() == Effect.LOOSENED || judged.effect() == Effect.NONCONFORMING) {
      credited.values().removeIf(recorded::equals);
    }
    return judged.effect() == Effect.CREDITED
        && credited.put(place + judged.pass().orElse(""), recorded) != null;
  }

  /**
   * @param credited what each bolt really turned, in each pass, was credited to and still stands
   */
  private void count(long n, Judged judged, Map<String, String> credited) {
    Entry.TorqueTaken taken = log.torque(n);
    Happening h = about.get(n);
    Happened what =
        Happened.of(
            h,
            outOfTurn.remove(h),
            taken.timing().tardy(),
            judged.verdict().equals(Optional.of(Verdict.IN_BAND)));
    boolean twice = stands(h, judged, credited);
    Recorded how = Recorded.of(h, what, judged, asked.contains(n), twice);
    tally.count(what, how);
    boolean good = what == Happened.GOOD || what == Happened.GOOD_LATE;
    if (good && how != Recorded.RIGHT && how != Recorded.EXCHANGED) {
      tally.falseAlarms++;
      tally.example(
          scene.title()
              + ": false alarm: "
              + judged.reason().code()
              + " "
              + judged.effect().code());
    }
    if (how == Recorded.WRONG) {
      tally.example(scene.title() + ": wrong: " + what + " by " + judged.reason().code());
      tally.stories.add(
          scene.title() + ", entry " + n + ": " + h.sentence() + " | " + judged.text());
    }
  }
}
