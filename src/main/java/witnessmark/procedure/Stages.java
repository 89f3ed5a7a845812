package witnessmark.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Lays a procedure out as its stages. */
public final class Stages {
  private Stages() {}

  /**
   * The procedure's stages in file order, all passes of a step in order; a stage's number is its
   * index in the list.
   *
   * @throws IllegalArgumentException when a prerequisite names a step or pass that does not exist,
   *     which {@link ProcedureFile} never lets through
   */
  public static List<Stage> of(Procedure procedure) {
    Waits waits = Waits.of(procedure);
    procedure.steps().stream()
        .flatMap(Stages::prerequisites)
        .filter(p -> waits.stage(p).isEmpty())
        .findFirst()
        .ifPresent(
            p -> {
              throw new IllegalArgumentException(
                  "procedure " + procedure.id() + " has no step or pass \"" + p + "\"");
            });
    List<Stage> stages = new ArrayList<>();
    for (int n = 0; n < waits.stages(); n++) {
      Step step = procedure.steps().get(waits.step(n));
      stages.add(new Stage(n, step, waits.pass(n), waits.requires(n), waits.physical(n)));
    }
    return List.copyOf(stages);
  }

  private static Stream<Prerequisite> prerequisites(Step step) {
    Stream<Prerequisite> own = step.after().stream().flatMap(List::stream);
    return step instanceof TightenStep t
        ? Stream.concat(own, t.passes().stream().flatMap(p -> p.after().stream()))
        : own;
  }
}
