package witnessmark.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.Stage;
import witnessmark.procedure.Stages;
import witnessmark.procedure.TightenStep;

/**
 * A procedure laid out for work: its stages, and its fasteners numbered from 0 in file order. Never
 * changes.
 */
public final class Plan {
  private final Procedure procedure;
  private final List<Stage> stages;
  private final List<TightenStep> stepOf = new ArrayList<>();
  private final List<String> names = new ArrayList<>();
  private final Map<String, Integer> byName = new HashMap<>();
  private final Map<String, Integer> firstFastener = new HashMap<>();
  private final int[] firstOfStage;
  private final Map<String, Integer> firstStage = new HashMap<>();

  public Plan(Procedure procedure) {
    this.procedure = procedure;
    this.stages = Stages.of(procedure);
    stages.forEach(s -> firstStage.putIfAbsent(s.step().id(), s.number()));
    procedure.steps().stream()
        .filter(TightenStep.class::isInstance)
        .map(TightenStep.class::cast)
        .forEach(this::number);
    firstOfStage =
        stages.stream().mapToInt(s -> firstFastener.getOrDefault(s.step().id(), -1)).toArray();
  }

  private void number(TightenStep step) {
    firstFastener.put(step.id(), names.size());
    for (int i = 0; i < step.positions().size(); i++) {
      byName.put(step.fastener(i), names.size());
      names.add(step.fastener(i));
      stepOf.add(step);
    }
  }

  public Procedure procedure() {
    return procedure;
  }

  public List<Stage> stages() {
    return stages;
  }

  /** How many fasteners there are. */
  public int fasteners() {
    return names.size();
  }

  /** The fastener's full name, e.g. {@code carrier-left/3}. */
  public String name(int fastener) {
    return names.get(fastener);
  }

  /** The fastener of that name. */
  public OptionalInt fastener(String name) {
    Integer found = byName.get(name);
    return found == null ? OptionalInt.empty() : OptionalInt.of(found);
  }

  /** The step that a fastener belongs to. */
  public TightenStep stepOf(int fastener) {
    return stepOf.get(fastener);
  }

  /** The first fastener of a step; its others follow it. */
  public int first(TightenStep step) {
    return firstFastener.get(step.id());
  }

  /** The first fastener of a tighten stage's step. */
  int first(Stage stage) {
    return firstOfStage[stage.number()];
  }

  /** The stage of a pass of the fastener's step. */
  public Stage stage(int fastener, int pass) {
    return stages.get(firstStage.get(stepOf(fastener).id()) + pass);
  }

  /** The stage of a pass that is named. */
  public Optional<Stage> stage(int fastener, String pass) {
    List<Pass> passes = stepOf(fastener).passes();
    for (int i = 0; i < passes.size(); i++) {
      if (passes.get(i).name().equals(pass)) {
        return Optional.of(stage(fastener, i));
      }
    }
    return Optional.empty();
  }

  /** How many fastener passes there are in all. */
  public int passes() {
    return stepOf.stream().mapToInt(s -> s.passes().size()).sum();
  }
}
