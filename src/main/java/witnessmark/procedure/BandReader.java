package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.toml.Section;
import witnessmark.torque.Angle;
import witnessmark.torque.AngleBand;
import witnessmark.torque.Band;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** Reads what a step or a pass asks of torque and angle. */
final class BandReader {
  private static final String EITHER = "give torque and tolerance, or min and max";

  /** Target and band of one tightening. */
  record Asked(Optional<Torque> target, Band band) {}

  private final Section section;
  private final String owner;

  /**
   * @param owner how faults name the table, e.g. {@code pass "snug"}
   */
  BandReader(Section section, String owner) {
    this.section = section;
    this.owner = owner;
  }

  /** Whether any key of a band or window stands in the table. */
  static boolean any(Section section) {
    return Stream.of("torque", "tolerance", "min", "max", "angle-min", "angle-max")
            .filter(section::has)
            .count()
        > 0;
  }

  Optional<Asked> torque() {
    boolean tolerance = section.has("tolerance");
    boolean min = section.has("min");
    boolean max = section.has("max");
    Optional<Torque> target = Written.torque(section, "torque").filter(this::aboveZero);
    Optional<Torque> low = Written.torque(section, "min");
    Optional<Torque> high = Written.torque(section, "max");
    if (tolerance && (min || max)) {
      section.fault("tolerance", owner + " has tolerance beside min or max", EITHER);
      return Optional.empty();
    }
    if (tolerance) {
      return toleranced(target);
    }
    if (min != max) {
      String there = min ? "min" : "max";
      String missing = min ? "max" : "min";
      section.fault(there, there + " without " + missing, "give " + missing + ", too");
      return Optional.empty();
    }
    if (min) {
      return low.flatMap(l -> high.flatMap(h -> limited(target, l, h)));
    }
    if (section.has("torque")) {
      section.fault(
          "torque", "torque without tolerance", "give tolerance, e.g. \"10 %\", or min and max");
    } else {
      section.fault("torque", owner + " has no torque", EITHER);
    }
    return Optional.empty();
  }

  private boolean aboveZero(Torque target) {
    if (target.digits().value().signum() == 0) {
      section.fault("torque", "torque " + target + " is nothing", "a torque above 0 is allowed");
      return false;
    }
    return true;
  }

  private Optional<Asked> toleranced(Optional<Torque> target) {
    Optional<String> text = Written.quoted(section, "tolerance", "tolerance = \"10 %\"");
    if (!section.has("torque")) {
      section.fault("tolerance", "tolerance without torque", "give torque, too, or min and max");
      return Optional.empty();
    }
    return text.flatMap(t -> t.contains("%") ? percent(target, t) : torqueTolerance(target));
  }

  private Optional<Asked> percent(Optional<Torque> target, String text) {
    if (!text.endsWith(" %")) {
      section.fault(
          "tolerance", "\"" + text + "\" is not a tolerance", "write number, blank, %: \"10 %\"");
      return Optional.empty();
    }
    Optional<Digits> percent =
        Written.checked(section, "tolerance", text.substring(0, text.length() - 2), Digits::new);
    if (percent.isPresent()
        && (percent.get().value().signum() < 0
            || percent.get().value().compareTo(BigDecimal.valueOf(100)) > 0)) {
      section.fault("tolerance", "tolerance " + text + " is out of range", "0 to 100 % is allowed");
      return Optional.empty();
    }
    return target.flatMap(
        t -> percent.flatMap(p -> around(t, () -> Band.plusMinusPercent(t, p.value()))));
  }

  private Optional<Asked> torqueTolerance(Optional<Torque> target) {
    Optional<Torque> tolerance = Written.torque(section, "tolerance");
    if (target.isEmpty() || tolerance.isEmpty()) {
      return Optional.empty();
    }
    if (tolerance.get().unit() != target.get().unit()) {
      section.fault(
          "tolerance",
          "tolerance in " + tolerance.get().unit() + " but torque in " + target.get().unit(),
          "use one unit, or a tolerance in %");
      return Optional.empty();
    }
    if (tolerance.get().compareTo(target.get()) > 0) {
      section.fault(
          "tolerance",
          "tolerance " + tolerance.get() + " is larger than the torque " + target.get(),
          "give a smaller tolerance");
      return Optional.empty();
    }
    return around(target.get(), () -> Band.plusMinus(target.get(), tolerance.get()));
  }

  private Optional<Asked> around(Torque target, java.util.function.Supplier<Band> band) {
    try {
      return Optional.of(new Asked(Optional.of(target), band.get()));
    } catch (IllegalArgumentException e) {
      section.fault(
          "tolerance",
          "torque and tolerance give no band that can be written: " + e.getMessage(),
          "use fewer digits");
      return Optional.empty();
    }
  }

  private Optional<Asked> limited(Optional<Torque> target, Torque low, Torque high) {
    if (low.compareTo(high) > 0) {
      section.fault(
          "min", "band upside down: min " + low + " is above max " + high, "exchange min and max");
      return Optional.empty();
    }
    if (high.digits().value().signum() == 0) {
      section.fault("max", "max " + high + " is nothing", "a torque above 0 is allowed");
      return Optional.empty();
    }
    Band band = new Band(low, high);
    if (target.isPresent()
        && (target.get().compareTo(low) < 0 || target.get().compareTo(high) > 0)) {
      section.fault(
          "torque",
          "torque " + target.get() + " is outside min " + low + " to max " + high,
          "give a torque within the limits, or other limits");
      return Optional.empty();
    }
    return Optional.of(new Asked(target, band));
  }

  Optional<AngleBand> angle() {
    Optional<Angle> low = angle("angle-min", "20");
    Optional<Angle> high = angle("angle-max", "70");
    if (section.has("angle-min") != section.has("angle-max")) {
      String there = section.has("angle-min") ? "angle-min" : "angle-max";
      String missing = section.has("angle-min") ? "angle-max" : "angle-min";
      section.fault(there, there + " without " + missing, "give both or neither");
      return Optional.empty();
    }
    if (low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    if (low.get().compareTo(high.get()) > 0) {
      section.fault(
          "angle-min",
          "angle window upside down: angle-min " + low.get() + " is above angle-max " + high.get(),
          "exchange angle-min and angle-max");
      return Optional.empty();
    }
    return Optional.of(new AngleBand(low.get(), high.get()));
  }

  private Optional<Angle> angle(String key, String example) {
    return Written.decimal(section, key, example)
        .flatMap(d -> Written.checked(section, key, d.text(), Angle::of))
        .filter(
            a -> {
              boolean negative = a.degrees().value().signum() < 0;
              if (negative) {
                section.fault(key, key + " " + a + " is negative", "0 degrees or more is allowed");
              }
              return !negative;
            });
  }
}
