package wrenchsim;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import wrenchsim.line.LineSender;
import wrenchsim.mqtt.BrokerLink;
import wrenchsim.mqtt.MqttSender;
import wrenchsim.shop.Bench;
import wrenchsim.shop.Chance;
import wrenchsim.shop.Habits;
import wrenchsim.shop.Mistake;
import wrenchsim.shop.Mistakes;
import wrenchsim.shop.Operator;
import wrenchsim.shop.Outcome;
import wrenchsim.shop.Pace;
import wrenchsim.shop.Parts;
import wrenchsim.shop.Patience;
import wrenchsim.shop.Person;
import wrenchsim.shop.Rack;
import wrenchsim.shop.Sheets;
import wrenchsim.shop.ShopClock;
import wrenchsim.shop.Tool;
import wrenchsim.truth.Truth;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.MalformedMessage;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Sender;
import wrenchsim.wrench.Wrench;
import wrenchsim.wrench.WrenchSpec;

/** The closed loop: a person does what the station expects until nothing is left to do. */
@Command(
    name = "shop",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "A person works at a station: tightens what is expected, hears the verdict, goes on.",
    footer = {
      "",
      "A wrench is NAME=VALUE pairs between commas; a bare first value is the serial number:",
      "  serial=TW-0417    required",
      "  max=100 min=20    range in its unit (min: a fifth of max)",
      "  unit=N.m          N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
      "  resolution=0.01   step of the display     scatter=0.005  relative standard deviation",
      "  bias=0            0.04 shows 4 %% too much  angle=yes      shows the angle",
      "  clock=yes         sends its time          offset=0 drift=0  seconds ahead, ppm fast",
      "  event=1           first number; clock: from the time of the run; none: does not count",
      "  position=no       knows the fastener      badge=badge-07 knows its holder",
      "  wear=0            what it shows more after 1000 events, relative",
      "  restart=N         counts from 1 again after N events; reset=1970 or seconds: its clock then",
      "  store=N           keeps N readings while out of range; away=0.1: how often it is;",
      "                    twice=0.25 half=0.25: how often they come again, or half of them",
      "  via=mqtt          or virtual:LINK (a pseudo-terminal) or port:PATH, baud=115200",
      "Of several wrenches the first that is allowed and whose range holds the band is taken.",
      "",
      "Example:",
      "  ${COMMAND-FULL-NAME} --station bench-1 --wrench TW-0417,max=100 \\",
      "    --wrench serial=TW-0502,max=30,via=virtual:tw-0502 --mistake carrier-left/2=under"
    })
final class ShopCommand implements Callable<Integer> {
  private static final Duration VERDICT_WITHIN = Duration.ofSeconds(5);
  private static final Duration FOR_EVER = Duration.ofDays(10_000);

  @Spec private CommandSpec spec;
  @Mixin private BrokerOptions broker;

  @Option(
      names = "--wrench",
      paramLabel = "WRENCH",
      required = true,
      converter = Converters.OfWrench.class,
      description = "A wrench within reach, see below; repeatable.")
  private List<WrenchOption> wrenches;

  @Option(
      names = "--mistake",
      paramLabel = "FASTENER=KIND",
      converter = Converters.OfMistake.class,
      description =
          "Something to do wrong at that fastener's first visit: under, over, redeliver, skip, "
              + "skip:OTHER, double, loosen, wrong, wrong:OTHER, wrongtool or cross; repeatable; "
              + "again for a fastener: at its next visit.")
  private List<Converters.Planned> mistakes = new ArrayList<>();

  @Option(
      names = "--mistake-rate",
      paramLabel = "[KIND=]R",
      converter = Converters.OfRates.class,
      description =
          "The share of visits that go wrong by chance, of one kind of mistake, or of under, over "
              + "and redeliver together; repeatable.")
  private List<Map<Mistake.Kind, Double>> mistakeRates = new ArrayList<>();

  @Mixin private JointOptions joints;

  /** How one of several expected fasteners is picked. */
  enum Pick {
    FIRST,
    RANDOM
  }

  @Option(
      names = "--pick",
      paramLabel = "first|random",
      defaultValue = "first",
      description = "Which of several expected fasteners comes next (default: ${DEFAULT-VALUE}).")
  private Pick pick;

  @Option(
      names = "--gates-first",
      description =
          "Touch no wrench while something is to be confirmed or measured: the order of work then "
              + "does not depend on how long that takes.")
  private boolean gatesFirst;

  @Option(
      names = "--scan",
      description =
          "Scan the label beside the fastener, which is its name, before each tightening.")
  private boolean scan;

  @Option(
      names = "--pace",
      paramLabel = "fast|shop",
      defaultValue = "fast",
      description =
          "fast: no waiting; shop: a few seconds from bolt to bolt (default: ${DEFAULT-VALUE}).")
  private Pace pace;

  @Option(
      names = "--idle-timeout",
      paramLabel = "SECONDS",
      defaultValue = "60",
      description =
          "Stop when nothing was heard for so long; 0: never (default: ${DEFAULT-VALUE}).")
  private int idleTimeout;

  @Mixin private RunOptions run;

  @Override
  public Integer call() throws IOException {
    refuseDoubles();
    ShopClock clock = new ShopClock(run.clockStart, pace);
    Mistakes plan = plan();
    Parts parts = joints.parts(run.seed);
    Bench bench = new Bench();
    List<LineSender> lines = new ArrayList<>();
    try (Truth truth = run.tellingAll();
        BrokerLink link = broker.link()) {
      // What reads the messages is loaded before anybody waits for one, so that only the bridge's
      // silence counts as silence.
      hearExpect(new Bench(), "{\"state\":\"idle\"}".getBytes(StandardCharsets.UTF_8));
      link.listen(broker.station.expect(), bytes -> hearExpect(bench, bytes));
      link.listen(broker.station.verdict(), bytes -> hearVerdict(bench, bytes));
      Map<String, Sender> senders = senders(link, clock, lines);
      link.open();
      Person person =
          new Person(
              rack(clock),
              parts,
              clock,
              plan,
              new Habits(pick == Pick.RANDOM, gatesFirst, scan),
              new Sheets(),
              run.seed,
              Main::warn);
      ShopWire wire = new ShopWire(link, broker.station, senders);
      Operator operator = new Operator(bench, person, wire, truth, patience(), Main::warn);
      Outcome outcome = operator.work();
      plan.unplayed()
          .forEach(f -> Main.warn("the mistake for " + f + " was never made: no visit there"));
      link.awaitAcknowledged();
      return outcome == Outcome.FINISHED && allAnswered(lines) ? 0 : Main.UNFINISHED;
    } finally {
      lines.forEach(LineSender::close);
    }
  }

  private Patience patience() {
    Duration idle = idleTimeout <= 0 ? FOR_EVER : Duration.ofSeconds(idleTimeout);
    return new Patience(idle, VERDICT_WITHIN);
  }

  private Mistakes plan() {
    try {
      Map<Mistake.Kind, Double> rates = new EnumMap<>(Mistake.Kind.class);
      mistakeRates.forEach(given -> given.forEach((kind, r) -> rates.merge(kind, r, Double::sum)));
      Mistakes plan = new Mistakes(rates, Chance.of(run.seed, "mistakes"));
      mistakes.forEach(m -> plan.script(m.fastener(), m.mistake()));
      return plan;
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
  }

  private void refuseDoubles() {
    List<String> serials = wrenches.stream().map(w -> w.spec().serial()).toList();
    for (String serial : serials) {
      if (serials.indexOf(serial) != serials.lastIndexOf(serial)) {
        throw new ParameterException(
            spec.commandLine(), "wrench %s is given twice".formatted(serial));
      }
    }
  }

  private Rack rack(ShopClock clock) {
    List<Tool> tools = new ArrayList<>();
    for (WrenchOption option : wrenches) {
      WrenchSpec wrench = option.at(clock.start());
      Random chance = Chance.of(run.seed, "wrench " + wrench.serial());
      tools.add(new Tool(new Wrench(wrench, clock.start(), chance), run.seed));
    }
    return new Rack(tools);
  }

  private Map<String, Sender> senders(BrokerLink link, ShopClock clock, List<LineSender> lines)
      throws IOException {
    Map<String, Sender> senders = new HashMap<>();
    for (WrenchOption option : wrenches) {
      WrenchSpec wrench = option.at(clock.start());
      Sender sender = new MqttSender(link, broker.station.torque());
      if (option.via().line().isPresent()) {
        LineSender line = new LineSender(option.via().line().get(), wrench.serial(), Main::warn);
        lines.add(line);
        line.open();
        sender = line;
      }
      senders.put(wrench.serial(), sender);
    }
    return senders;
  }

  private static boolean allAnswered(List<LineSender> lines) {
    boolean all = true;
    for (LineSender line : lines) {
      if (!line.awaitAtMost(0, VERDICT_WITHIN)) {
        Main.warn("%d frames stayed unanswered on a serial line".formatted(line.unanswered()));
        all = false;
      }
    }
    return all;
  }

  private static void hearExpect(Bench bench, byte[] payload) {
    try {
      bench.hear(ExpectMessage.read(payload));
    } catch (MalformedMessage e) {
      Main.warn(e.getMessage());
    }
  }

  private static void hearVerdict(Bench bench, byte[] payload) {
    try {
      bench.hear(VerdictMessage.read(payload));
    } catch (MalformedMessage e) {
      Main.warn(e.getMessage());
    }
  }
}
