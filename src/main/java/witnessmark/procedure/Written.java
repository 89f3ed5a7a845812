package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;
import witnessmark.torque.Digits;
import witnessmark.torque.Label;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueUnit;
import witnessmark.torque.UnitSpelling;

/** Reads values that a file writes as texts, and says what was meant where one is wrong. */
final class Written {
  static final String LABEL = "1 to 64 printable characters without blanks at the ends are allowed";

  private Written() {}

  /** The key's torque. */
  static Optional<Torque> torque(Section section, String key) {
    return quoted(section, key, key + " = \"24 N.m\"").flatMap(t -> torque(section, key, t));
  }

  private static Optional<Torque> torque(Section section, String key, String text) {
    int blank = text.indexOf(' ');
    String symbol = text.substring(blank + 1).strip();
    if (blank >= 0 && TorqueUnit.of(symbol).isEmpty()) {
      section.faultWithin(
          key, text, text.lastIndexOf(symbol), "unknown unit \"" + symbol + "\"", unitHint(symbol));
      return Optional.empty();
    }
    return checked(section, key, text, Torque::parse);
  }

  /** The key's decimal number; {@code example} shows how it is written. */
  static Optional<Digits> decimal(Section section, String key, String example) {
    return quoted(section, key, key + " = \"" + example + "\"")
        .flatMap(t -> checked(section, key, t, Digits::new));
  }

  /** The key's decimal number from {@code least} to {@code most}. */
  static Optional<Digits> within(
      Section section, String key, String example, String least, String most) {
    return decimal(section, key, example)
        .filter(
            d -> {
              boolean good =
                  d.value().compareTo(new BigDecimal(least)) >= 0
                      && d.value().compareTo(new BigDecimal(most)) <= 0;
              if (!good) {
                section.fault(
                    key,
                    key + " " + d.value().toPlainString() + " is out of range",
                    least + " to " + most + " is allowed");
              }
              return good;
            });
  }

  /** The key's text in quotes; a bare number is told apart from other wrong kinds. */
  static Optional<String> quoted(Section section, String key, String example) {
    if (section.isNumber(key)) {
      section.fault(key, key + " is a number without quotes", "write " + example);
      return Optional.empty();
    }
    return section.text(key);
  }

  /** Reads the text; what the reader throws becomes the fault. */
  static <T> Optional<T> checked(
      Section section, String key, String text, Function<String, T> reader) {
    try {
      return Optional.of(reader.apply(text));
    } catch (IllegalArgumentException e) {
      fault(section, key, e);
      return Optional.empty();
    }
  }

  /**
   * Records the exception's sentence, whose part after the first semicolon says what is allowed.
   */
  static void fault(Section section, String key, IllegalArgumentException e) {
    String sentence = String.valueOf(e.getMessage());
    int semicolon = sentence.indexOf("; ");
    if (semicolon < 0) {
      section.fault(key, sentence, "write another value");
    } else {
      section.fault(key, sentence.substring(0, semicolon), sentence.substring(semicolon + 2));
    }
  }

  /** The text, where it has the form of a label. */
  static Optional<String> label(Section section, String key, String what, String text) {
    try {
      return Optional.of(Label.check(what, text));
    } catch (IllegalArgumentException e) {
      section.fault(key, what + " \"" + text + "\" is malformed", LABEL);
      return Optional.empty();
    }
  }

  private static String unitHint(String symbol) {
    return UnitSpelling.meant(symbol)
        .map(u -> "did you mean \"" + u + "\"?")
        .orElseGet(() -> Nearest.hint(symbol, List.of(TorqueUnit.allowed().split(" "))));
  }
}
