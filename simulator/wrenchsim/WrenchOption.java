package wrenchsim;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import wrenchsim.wrench.Gauge;
import wrenchsim.wrench.Life;
import wrenchsim.wrench.Restart;
import wrenchsim.wrench.Store;
import wrenchsim.wrench.Unit;
import wrenchsim.wrench.WrenchClock;
import wrenchsim.wrench.WrenchSpec;

/**
 * One {@code --wrench}.
 *
 * @param spec the wrench; its first event number is still to be replaced when {@code byClock}
 * @param via how it speaks
 * @param byClock whether its numbers begin with the time of the run
 */
record WrenchOption(WrenchSpec spec, Via via, boolean byClock) {
  private static final List<String> NAMES =
      List.of(
          "serial",
          "max",
          "min",
          "unit",
          "resolution",
          "angle",
          "scatter",
          "bias",
          "clock",
          "offset",
          "drift",
          "event",
          "position",
          "badge",
          "wear",
          "restart",
          "reset",
          "store",
          "away",
          "twice",
          "half",
          "via",
          "baud");
  private static final Instant NUMBERS_BEGIN = Instant.parse("2026-01-01T00:00:00Z");

  WrenchOption {
    if (via.line().isPresent() && spec.firstEvent().isEmpty()) {
      throw new IllegalArgumentException(
          "a wrench on a serial line counts its events: event=none goes with via=mqtt only");
    }
  }

  /** Reads {@code serial=TW-0417,max=100,…}. */
  static WrenchOption parse(String text) {
    Fields fields = new Fields(text, NAMES);
    String event = fields.text("event").orElse("1");
    WrenchSpec spec =
        new WrenchSpec(
            fields
                .text("serial")
                .orElseThrow(
                    () ->
                        new IllegalArgumentException(
                            "a wrench needs its serial number: serial=TW-0417")),
            gauge(fields),
            clock(fields),
            firstEvent(event),
            fields.yes("position", false),
            fields.text("badge"),
            life(fields));
    int baud = fields.decimal("baud", Integer.toString(Via.USUAL_BAUD)).intValue();
    return new WrenchOption(
        spec, Via.parse(fields.text("via").orElse("mqtt"), baud), event.equals("clock"));
  }

  /** The wrench in a run that begins at {@code start}. */
  WrenchSpec at(Instant start) {
    if (!byClock) {
      return spec;
    }
    long hundredths = Duration.between(NUMBERS_BEGIN, start).toMillis() / 10;
    return numberedFrom(Math.max(0, hundredths));
  }

  /** The wrench with another first number. */
  WrenchSpec numberedFrom(long first) {
    return new WrenchSpec(
        spec.serial(),
        spec.gauge(),
        spec.clock(),
        Optional.of(first),
        spec.knowsPosition(),
        spec.operator(),
        spec.life());
  }

  private static Life life(Fields fields) {
    return new Life(
        fields.decimal("wear", "0").doubleValue(),
        fields.only("restart", "reset").map(events -> restart(fields, events)),
        fields.only("store", "away", "twice", "half").map(readings -> store(fields, readings)));
  }

  private static Restart restart(Fields fields, String events) {
    String reset = fields.text("reset").orElse("0");
    return new Restart(
        whole("restart", events),
        reset.equals("1970")
            ? Optional.empty()
            : Optional.of(
                Duration.ofMillis(fields.decimal("reset", "0").movePointRight(3).longValue())));
  }

  private static Store store(Fields fields, String readings) {
    return new Store(
        whole("store", readings),
        fields.decimal("away", "0.1").doubleValue(),
        fields.decimal("twice", "0.25").doubleValue(),
        fields.decimal("half", "0.25").doubleValue());
  }

  private static int whole(String name, String text) {
    if (!text.matches("[0-9]{1,9}")) {
      throw new IllegalArgumentException(
          "%s is a whole number, but got '%s'".formatted(name, text));
    }
    return Integer.parseInt(text);
  }

  private static Gauge gauge(Fields fields) {
    String symbol = fields.text("unit").orElse("N.m");
    Unit unit =
        Unit.of(symbol)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "unit is one of %s, but got '%s'".formatted(Unit.allowed(), symbol)));
    BigDecimal max = fields.decimal("max", "100");
    // From a fifth of the maximum up is where a hand torque wrench is good: common practice.
    BigDecimal fifth = max.multiply(new BigDecimal("0.2"));
    return new Gauge(
        unit,
        fields.decimal("min", fifth.toPlainString()),
        max,
        fields.decimal("resolution", "0.01"),
        fields.decimal("scatter", "0.005").doubleValue(),
        fields.decimal("bias", "0").doubleValue(),
        fields.yes("angle", true));
  }

  private static Optional<WrenchClock> clock(Fields fields) {
    if (!fields.yes("clock", true)) {
      return Optional.empty();
    }
    BigDecimal offsetMillis = fields.decimal("offset", "0").movePointRight(3);
    return Optional.of(
        new WrenchClock(
            Duration.ofMillis(offsetMillis.longValue()),
            fields.decimal("drift", "0").doubleValue()));
  }

  private static Optional<Long> firstEvent(String event) {
    if (event.equals("none")) {
      return Optional.empty();
    }
    if (event.equals("clock")) {
      return Optional.of(0L);
    }
    if (!event.matches("[0-9]{1,15}")) {
      throw new IllegalArgumentException(
          "event is the first number, clock or none, but got '" + event + "'");
    }
    return Optional.of(Long.valueOf(event));
  }
}
