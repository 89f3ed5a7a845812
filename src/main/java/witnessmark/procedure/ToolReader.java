package witnessmark.procedure;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;
import witnessmark.torque.Adapter;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Length;
import witnessmark.torque.WrenchKind;

/** Reads what a tighten step asks of the wrench and of what sits on it. */
final class ToolReader {
  private static final List<String> KINDS =
      Stream.of(WrenchKind.values()).map(WrenchKind::code).toList();
  private static final List<String> RULES = List.of("simple", "guarded");

  private final Section section;

  ToolReader(Section section) {
    this.section = section;
  }

  Tool read() {
    return new Tool(
        word("wrench-kind", "wrench kind", KINDS).map(WrenchKind::of),
        section.section("adapter").flatMap(this::adapter),
        acceptance(),
        Written.within(section, "steps-in-band", "10", "0", "1000")
            .map(Digits::value)
            .orElse(Tool.ANY.stepsInBand()));
  }

  private Acceptance acceptance() {
    Optional<String> rule = word("acceptance", "acceptance", RULES);
    Optional<Digits> factor = Written.within(section, "guard", "1", "0.1", "3");
    boolean guarded = rule.equals(Optional.of("guarded"));
    boolean simple = rule.equals(Optional.of("simple")) || !section.has("acceptance");
    if (section.has("guard") && simple) {
      section.fault(
          "guard", "guard without guarded acceptance", "write acceptance = \"guarded\", too");
    }
    return guarded
        ? new Acceptance(Optional.of(factor.orElse(new Digits("1")).value()))
        : Acceptance.SIMPLE;
  }

  private Optional<Adapter> adapter(Section table) {
    Optional<Length> lever = length(table, "lever", "350 mm");
    Optional<Length> offset = length(table, "offset", "40 mm");
    Optional<Angle> angle =
        table.has("angle")
            ? Written.decimal(table, "angle", "0")
                .flatMap(d -> Written.checked(table, "angle", d.text(), Angle::of))
            : Optional.of(Angle.of("0"));
    table.finish();
    if (lever.isEmpty() || offset.isEmpty() || angle.isEmpty()) {
      return Optional.empty();
    }
    return Written.checked(
        section, "adapter", "", text -> new Adapter(lever.get(), offset.get(), angle.get()));
  }

  private static Optional<Length> length(Section table, String key, String example) {
    if (!table.has(key)) {
      table.fault(key, "adapter has no \"" + key + "\"", "give it, e.g. " + written(key, example));
    }
    Function<String, Length> reader = Length::parse;
    return Written.quoted(table, key, written(key, example))
        .flatMap(t -> Written.checked(table, key, t, reader));
  }

  private static String written(String key, String example) {
    return key + " = \"" + example + "\"";
  }

  private Optional<String> word(String key, String what, List<String> allowed) {
    return section
        .text(key)
        .filter(
            w -> {
              boolean known = allowed.contains(w);
              if (!known) {
                section.fault(key, "unknown " + what + " \"" + w + "\"", Nearest.hint(w, allowed));
              }
              return known;
            });
  }
}
