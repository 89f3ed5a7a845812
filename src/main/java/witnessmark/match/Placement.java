package witnessmark.match;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import witnessmark.entry.Reason;
import witnessmark.procedure.Stage;

/**
 * Where a torque event belongs.
 *
 * @param reason why there, or why nowhere
 * @param fastener the plan's number of the fastener, where there is one
 * @param stage the pass it is to be judged against, where there is a fastener
 * @param alternatives names of other fasteners that it could have been
 * @param counts whether the turn adds to those of the pulls before and after it: not where they may
 *     have been on different fasteners
 */
public record Placement(
    Reason reason,
    OptionalInt fastener,
    Optional<Stage> stage,
    List<String> alternatives,
    boolean counts) {
  public Placement {
    alternatives = List.copyOf(alternatives);
    if (reason.placed() != fastener.isPresent() || fastener.isPresent() != stage.isPresent()) {
      throw new IllegalArgumentException("a placed event has a fastener and a stage, others none");
    }
  }

  static Placement on(Reason reason, int fastener, Stage stage) {
    return new Placement(reason, OptionalInt.of(fastener), Optional.of(stage), List.of(), true);
  }

  static Placement on(Reason reason, int fastener, Stage stage, List<String> alternatives) {
    return new Placement(reason, OptionalInt.of(fastener), Optional.of(stage), alternatives, true);
  }

  static Placement nowhere(Reason reason, List<String> alternatives) {
    return new Placement(reason, OptionalInt.empty(), Optional.empty(), alternatives, false);
  }

  /** The same place, where others are possible, too. */
  Placement orElse(List<String> others) {
    return new Placement(reason, fastener, stage, others, counts);
  }

  /** The same place, where this pull and those before may have been on different fasteners. */
  Placement notCounted() {
    return new Placement(reason, fastener, stage, alternatives, false);
  }
}
