package wrenchsim;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import wrenchsim.joint.JointSpec;
import wrenchsim.joint.Rehit;
import wrenchsim.shop.JointKind;
import wrenchsim.shop.Mistake;
import wrenchsim.shop.Mistakes;
import wrenchsim.wire.Topics;

/** Texts of the command line as values; what is wrong with one is said in its own words. */
final class Converters {
  private Converters() {}

  private static <T> T converted(String text, Function<String, T> read) {
    try {
      return read.apply(text);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new TypeConversionException(e.getMessage());
    }
  }

  /** {@code bench-1}. */
  static final class OfStation implements ITypeConverter<Topics> {
    @Override
    public Topics convert(String text) {
      return converted(text, Topics::new);
    }
  }

  /** {@code serial=TW-0417,max=100}. */
  static final class OfWrench implements ITypeConverter<WrenchOption> {
    @Override
    public WrenchOption convert(String text) {
      return converted(text, WrenchOption::parse);
    }
  }

  /** A mistake and the fastener it is for. */
  record Planned(String fastener, Mistake mistake) {}

  /** {@code carrier-left/3=under} or {@code carrier-left/3=skip:carrier-left/4}. */
  static final class OfMistake implements ITypeConverter<Planned> {
    @Override
    public Planned convert(String text) {
      return converted(text, OfMistake::planned);
    }

    private static Planned planned(String text) {
      String[] sides = text.split("=", 2);
      if (sides.length != 2 || sides[0].isEmpty()) {
        throw new IllegalArgumentException(
            "a mistake is written FASTENER=KIND, e.g. carrier-left/3=under, but got '"
                + text
                + "'");
      }
      return new Planned(sides[0], Mistake.parse(sides[1]));
    }
  }

  /** A fastener or step, as it is. */
  static final class OfPlace implements ITypeConverter<String> {
    @Override
    public String convert(String text) {
      return text;
    }
  }

  /** {@code under=0.01}, or a bare rate for the usual kinds. */
  static final class OfRates implements ITypeConverter<Map<Mistake.Kind, Double>> {
    @Override
    public Map<Mistake.Kind, Double> convert(String text) {
      return converted(text, OfRates::rates);
    }

    private static Map<Mistake.Kind, Double> rates(String text) {
      String[] sides = text.split("=", 2);
      return sides.length == 1
          ? Mistakes.usual(number("a mistake rate", text))
          : Map.of(Mistake.kind(sides[0]), number("a mistake rate", sides[1]));
    }
  }

  private static double number(String what, String text) {
    if (!text.matches("[0-9]{1,6}(\\.[0-9]{1,9})?")) {
      throw new IllegalArgumentException(
          "%s is a decimal number, but got '%s'".formatted(what, text));
    }
    return Double.parseDouble(text);
  }

  /** {@code 1.5:0.5}. */
  static final class OfRehit implements ITypeConverter<Rehit> {
    @Override
    public Rehit convert(String text) {
      return converted(text, OfRehit::rehit);
    }

    private static Rehit rehit(String text) {
      String[] parts = text.split(":", -1);
      if (parts.length != 2) {
        throw new IllegalArgumentException(
            "the angle of a second hit is MEAN:DEVIATION in degrees, e.g. 1.5:0.5, but got '"
                + text
                + "'");
      }
      return new Rehit(number("its mean", parts[0]), number("its deviation", parts[1]));
    }
  }

  /** What is said of the joints of a place; the rest is as everywhere. */
  record Said(double degrees, Optional<Double> scatter, Optional<Rehit> rehit) {
    JointKind kind(JointKind usual) {
      return new JointKind(
          Optional.of(degrees), scatter.orElse(usual.scatter()), rehit.orElse(usual.rehit()));
    }
  }

  /** {@code soft}, {@code 40:0.1} or {@code 40:0.1:1.5:0.5}. */
  static final class OfJoint implements ITypeConverter<Said> {
    @Override
    public Said convert(String text) {
      return converted(text, OfJoint::said);
    }

    private static Said said(String text) {
      String[] parts = text.split(":", 3);
      return new Said(
          OfHardness.degrees(parts[0]),
          parts.length > 1 ? Optional.of(number("a scatter", parts[1])) : Optional.empty(),
          parts.length > 2 ? Optional.of(OfRehit.rehit(parts[2])) : Optional.empty());
    }
  }

  /** {@code 2026-11-25T10:00:00Z}. */
  static final class OfInstant implements ITypeConverter<Instant> {
    @Override
    public Instant convert(String text) {
      return converted(text, t -> OffsetDateTime.parse(t).toInstant());
    }
  }

  /** {@code hard}, {@code soft} or degrees. */
  static final class OfHardness implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return converted(text, OfHardness::degrees);
    }

    private static Double degrees(String text) {
      if (text.equals("hard")) {
        return JointSpec.HARD;
      }
      if (text.equals("soft")) {
        return JointSpec.SOFT;
      }
      if (!text.matches("[0-9]{1,5}(\\.[0-9]{1,6})?") || Double.parseDouble(text) == 0) {
        throw new IllegalArgumentException(
            "a joint's hardness is hard, soft, or degrees above 0, but got '" + text + "'");
      }
      return Double.valueOf(text);
    }
  }
}
