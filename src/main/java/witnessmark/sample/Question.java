package witnessmark.sample;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which readings are asked for; what is empty asks for all.
 *
 * @param fastener full name, as {@code carrier-left/3}
 * @param group a tighten step's id
 * @param pass a pass's name; empty asks for the last one that tightens
 * @param from readings of that moment and later
 * @param to readings before that moment
 */
public record Question(
    Optional<String> fastener,
    Optional<String> group,
    Optional<String> wrench,
    Optional<String> operator,
    Optional<String> procedure,
    Optional<String> revision,
    Optional<String> pass,
    Optional<Instant> from,
    Optional<Instant> to) {
  /**
   * @throws IllegalArgumentException when neither fastener, group, wrench nor operator is named, or
   *     no time lies between
   */
  public Question {
    if (fastener.isEmpty() && group.isEmpty() && wrench.isEmpty() && operator.isEmpty()) {
      throw new IllegalArgumentException(
          "name what to look at: --fastener, --group, --wrench or --operator");
    }
    if (from.isPresent() && to.isPresent() && !from.get().isBefore(to.get())) {
      throw new IllegalArgumentException(
          "from " + from.get() + " is not before " + to.get() + ": nothing lies between");
    }
  }

  /** What is asked for beside procedure, revision and pass, e.g. {@code wrench TW-0417}. */
  public String text() {
    List<String> parts = new ArrayList<>();
    fastener.ifPresent(f -> parts.add("fastener " + f));
    group.ifPresent(g -> parts.add("group " + g));
    wrench.ifPresent(w -> parts.add("wrench " + w));
    operator.ifPresent(o -> parts.add("operator " + o));
    from.ifPresent(f -> parts.add("from " + f));
    to.ifPresent(t -> parts.add("before " + t));
    return String.join(", ", parts);
  }

  /** Whether a fastener of that name is asked for. */
  boolean asks(String name) {
    return fastener.map(name::equals).orElse(true)
        && group.map(g -> name.startsWith(g + "/")).orElse(true);
  }

  /** Whether readings of that moment are. */
  boolean asks(Instant moment) {
    return from.map(f -> !moment.isBefore(f)).orElse(true) && to.map(moment::isBefore).orElse(true);
  }

  /** Whether that wrench in those hands is; an unknown hand is none that was named. */
  boolean asks(String serial, Optional<String> hand) {
    return wrench.map(serial::equals).orElse(true) && (operator.isEmpty() || operator.equals(hand));
  }
}
