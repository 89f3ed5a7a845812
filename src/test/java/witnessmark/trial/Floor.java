package witnessmark.trial;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
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
import witnessmark.entry.Entry;
import witnessmark.job.Due;
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
  private final Set<Happening> outOfTurn = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Map<Long, Done> done = new TreeMap<>();
  private final Parts parts;
  private final ShopClock clock = new ShopClock(Optional.of(START), Pace.FAST);
  private final Station station;
  private final Tally tally = new Tally();
  private final Foretold foretold;
  private final String procedure;
  private Shop shop = Shop.EMPTY;

  Floor(Scene scene, long seed) {
    this.scene = scene;
    foretold = new Foretold(scene);
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
    new Account(scene, foretold, shop.jobs().get(job), tally).settle(done);
    done.clear();
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
        Happening h = truth.remove(t.raw());
        if (h == null) {
          throw new IllegalStateException("nobody did what is on record: " + t.raw());
        }
        boolean asks = Recorded.asks(t.judged());
        done.put(n, new Done(h, outOfTurn.remove(h), t.timing().tardy(), t.judged(), asks));
        station.hearVerdict(Told.verdict(n, t));
      } else if (entry instanceof Entry.Assigned a) {
        station.hearVerdict(Told.verdict(n, a, log.torque(a.assigns())));
      } else if (entry instanceof Entry.Reread r) {
        tally.rereads++;
        if (Recorded.asks(r.judged())) {
          done.computeIfPresent(r.rereads(), (k, d) -> d.askedAbout());
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
      spoke |=
          tried(assign(job, question, Optional.of(done.get(question).place())))
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
}
