package wrenchsim.shop;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wrenchsim.PaperBridge;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.truth.Happening;
import wrenchsim.wire.MalformedMessage;
import wrenchsim.wrench.Gauge;
import wrenchsim.wrench.Life;
import wrenchsim.wrench.Store;
import wrenchsim.wrench.Unit;
import wrenchsim.wrench.Wrench;
import wrenchsim.wrench.WrenchClock;
import wrenchsim.wrench.WrenchSpec;

/** A station and a bridge on paper in one thread, with a record of everything that passed. */
final class Benchwork {
  static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

  private final Map<Kind, Double> rates = new EnumMap<>(Kind.class);
  private final Map<String, String> script = new java.util.LinkedHashMap<>();
  private final List<Tool> tools = new ArrayList<>();
  private final long seed;
  private Habits habits = Habits.PLAIN;
  private Parts parts;
  private Station station;

  final Sheets sheets = new Sheets();
  final List<Happening> truth = new ArrayList<>();
  final List<Happening> judged = new ArrayList<>();
  final List<String> sent = new ArrayList<>();
  final List<String> warnings = new ArrayList<>();

  Benchwork(long seed) {
    this.seed = seed;
  }

  Benchwork tool(String serial, Optional<Long> firstEvent, Optional<Store> store) {
    Gauge gauge =
        new Gauge(
            Unit.NEWTON_METRE,
            BigDecimal.ONE,
            new BigDecimal("100"),
            new BigDecimal("0.01"),
            0.005,
            0,
            true);
    WrenchSpec spec =
        new WrenchSpec(
            serial,
            gauge,
            Optional.of(WrenchClock.RIGHT),
            firstEvent,
            false,
            Optional.empty(),
            new Life(0, Optional.empty(), store));
    tools.add(new Tool(new Wrench(spec, START, Chance.of(seed, "wrench " + serial)), seed));
    return this;
  }

  Benchwork tool(String serial) {
    return tool(serial, Optional.of(1L), Optional.empty());
  }

  Benchwork rate(Kind kind, double rate) {
    rates.put(kind, rate);
    return this;
  }

  Benchwork mistake(String fastener, String kind) {
    script.put(fastener, kind);
    return this;
  }

  Benchwork habits(Habits other) {
    habits = other;
    return this;
  }

  Parts parts() {
    return parts;
  }

  Station station() {
    if (station == null) {
      Mistakes mistakes = new Mistakes(rates, Chance.of(seed, "mistakes"));
      script.forEach((fastener, kind) -> mistakes.script(fastener, Mistake.parse(kind)));
      parts = new Parts(seed, JointKind.USUAL, Map.of());
      ShopClock clock = new ShopClock(Optional.of(START), Pace.FAST);
      station =
          new Station(
              new Person(
                  new Rack(tools), parts, clock, mistakes, habits, sheets, seed, warnings::add),
              parts);
    }
    return station;
  }

  /** Works until there is nothing to do with a wrench. */
  Benchwork work(PaperBridge bridge) throws IOException, MalformedMessage {
    station().hearExpect(bridge.expect(true));
    for (Optional<Deed> deed = station.act(); deed.isPresent(); deed = station.act()) {
      truth.addAll(deed.get().truth());
      for (Message message : deed.get().messages()) {
        sent.add(new String(message.bytes(), UTF_8));
        if (message instanceof Message.Torque) {
          for (byte[] verdict : bridge.takeAll(message.bytes())) {
            station.hearVerdict(verdict).ifPresent(judged::add);
          }
        }
      }
      station.hearExpect(bridge.expect(true));
    }
    return this;
  }

  List<String> places() {
    return truth.stream().map(h -> h.work().fastener().orElseThrow()).toList();
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    truth.forEach(h -> lines.add(h.json(lines.size() + 1)));
    return lines;
  }
}
