package witnessmark.procedure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import java.util.stream.IntStream;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;

/** Reads the fasteners of a group and the order among them. */
final class GroupReader {
  static final int FASTENERS = 500;
  private static final int FULL_NAME = 64;
  private static final List<String> ORDERS = List.of("strict", "pattern", "any");

  private final Section section;
  private final String id;

  GroupReader(Section section, String id) {
    this.section = section;
    this.id = id;
  }

  /** The positions' names; empty where they are faulty. */
  List<String> positions() {
    boolean counted = section.has("fasteners");
    boolean named = section.has("positions");
    OptionalLong count = section.integer("fasteners", 1, FASTENERS);
    List<String> names = named ? StepReader.labels(section, "positions", "position") : List.of();
    if (counted && named) {
      section.fault(
          "fasteners", "both fasteners and positions are given", "give the number or the names");
      return List.of();
    }
    if (!counted && !named) {
      section.fault(
          "fasteners",
          "step \"" + id + "\" has neither fasteners nor positions",
          "give the number, e.g. fasteners = 4, or the positions' names");
    }
    if (count.isPresent()) {
      names = IntStream.rangeClosed(1, (int) count.getAsLong()).mapToObj(String::valueOf).toList();
    }
    return good(names) ? names : List.of();
  }

  private boolean good(List<String> names) {
    boolean good = true;
    if (names.size() > FASTENERS) {
      section.fault(
          "positions",
          "positions names " + names.size() + " fasteners",
          "at most " + FASTENERS + " are allowed");
      good = false;
    }
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      if (name.contains("/") || name.contains(":")) {
        section.fault(
            "positions",
            i,
            "position \"" + name + "\" holds / or :",
            "leave them out; they part step, position and pass");
        good = false;
      } else if (id.length() + 1 + name.codePointCount(0, name.length()) > FULL_NAME) {
        section.fault(
            section.has("positions") ? "positions" : "id",
            i,
            "the fastener's full name \"" + id + "/" + name + "\" is too long",
            "at most " + FULL_NAME + " characters are allowed for step and position");
        return false;
      }
    }
    return good;
  }

  /** The working order among {@code count} fasteners; 0 where their number is not known. */
  Optional<Order> order(int count) {
    Optional<String> word = section.text("order");
    Optional<List<Long>> pattern = section.integers("pattern");
    if (word.isPresent() && !ORDERS.contains(word.get())) {
      section.fault(
          "order", "unknown order \"" + word.get() + "\"", Nearest.hint(word.get(), ORDERS));
      return Optional.empty();
    }
    boolean wanted = word.filter("pattern"::equals).isPresent();
    if (section.has("pattern") && !wanted && (word.isPresent() || !section.has("order"))) {
      section.fault(
          "pattern",
          "pattern without order = \"pattern\"",
          "give order = \"pattern\", or take pattern out");
      return Optional.empty();
    }
    if (wanted && !section.has("pattern")) {
      section.fault(
          "order",
          "order is \"pattern\" but there is no pattern",
          "give each position once, counted from 1, e.g. pattern = [1, 3, 2, 4]");
      return Optional.empty();
    }
    if (count == 0 || (section.has("order") && word.isEmpty())) {
      return Optional.empty();
    }
    if (wanted) {
      return pattern.filter(p -> complete(p, count)).map(GroupReader::inPattern);
    }
    Order.Kind kind = word.filter("any"::equals).isPresent() ? Order.Kind.ANY : Order.Kind.STRICT;
    return Optional.of(new Order(kind, IntStream.range(0, count).boxed().toList()));
  }

  private static Order inPattern(List<Long> pattern) {
    return new Order(
        Order.Kind.PATTERN, pattern.stream().map(p -> Math.toIntExact(p - 1)).toList());
  }

  private boolean complete(List<Long> pattern, int count) {
    TreeSet<Long> missing = new TreeSet<>();
    IntStream.rangeClosed(1, count).forEach(i -> missing.add((long) i));
    boolean good = true;
    for (int i = 0; i < pattern.size(); i++) {
      long position = pattern.get(i);
      if (position < 1 || position > count) {
        section.fault(
            "pattern",
            i,
            "pattern names position " + position + ", which the group has not",
            "1 to " + count + " are allowed");
        good = false;
      } else if (!missing.remove(position)) {
        section.fault(
            "pattern",
            i,
            "pattern names position " + position + " twice",
            "give each position once");
        good = false;
      }
    }
    if (!missing.isEmpty()) {
      section.fault(
          "pattern",
          "pattern skips position " + Sentence.list(missing.stream().map(String::valueOf).toList()),
          "give each of 1 to " + count + " once");
      good = false;
    }
    return good;
  }
}
