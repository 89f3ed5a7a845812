package witnessmark.procedure;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * What waits for what, by stage number, computed from the steps' names alone, so that it serves a
 * file that has other faults as well as a finished procedure.
 */
final class Waits {
  /** A pass's name and its own prerequisites; an attest or measure step counts as one pass. */
  record PassNames(String name, List<Prerequisite> after) {}

  /** A step's id, prerequisites and passes. */
  record StepNames(
      String id, Optional<List<Prerequisite>> after, boolean tighten, List<PassNames> passes) {}

  private final List<StepNames> steps;
  private final Map<String, Integer> stepById = new HashMap<>();
  private final List<Integer> firstStage = new ArrayList<>();
  private final List<Integer> stepOfStage = new ArrayList<>();
  private final List<Set<Integer>> requires = new ArrayList<>();
  private final List<Set<Integer>> physical = new ArrayList<>();

  Waits(List<StepNames> steps) {
    this.steps = List.copyOf(steps);
    for (int s = 0; s < steps.size(); s++) {
      if (!steps.get(s).id().isEmpty()) {
        stepById.putIfAbsent(steps.get(s).id(), s);
      }
      firstStage.add(stepOfStage.size());
      for (int p = 0; p < steps.get(s).passes().size(); p++) {
        stepOfStage.add(s);
      }
    }
    for (int stage = 0; stage < stepOfStage.size(); stage++) {
      collect(stage);
    }
  }

  static Waits of(Procedure procedure) {
    return new Waits(procedure.steps().stream().map(Waits::names).toList());
  }

  private static StepNames names(Step step) {
    if (step instanceof TightenStep t) {
      List<PassNames> passes =
          t.passes().stream().map(p -> new PassNames(p.name(), p.after())).toList();
      return new StepNames(t.id(), t.after(), true, passes);
    }
    return new StepNames(
        step.id(), step.after(), false, List.of(new PassNames(step.id(), List.of())));
  }

  int stages() {
    return stepOfStage.size();
  }

  /** Index of the step that the stage belongs to. */
  int step(int stage) {
    return stepOfStage.get(stage);
  }

  /** Index of the stage's pass within its step. */
  int pass(int stage) {
    return stage - firstStage.get(step(stage));
  }

  /** The first stage of the step. */
  int first(int step) {
    return firstStage.get(step);
  }

  /** Whether the target is the stage itself or a later pass of the same step. */
  boolean waitsForItself(int stage, int target) {
    return step(stage) == step(target) && target >= stage;
  }

  /** The same without prerequisites of a stage on itself or on a later pass of its step. */
  Waits withoutSelfWaits() {
    List<StepNames> mended = new ArrayList<>();
    for (int s = 0; s < steps.size(); s++) {
      int first = first(s);
      List<PassNames> passes = new ArrayList<>();
      for (PassNames p : steps.get(s).passes()) {
        passes.add(new PassNames(p.name(), others(first + passes.size(), p.after())));
      }
      StepNames step = steps.get(s);
      mended.add(
          new StepNames(
              step.id(), step.after().map(a -> others(first, a)), step.tighten(), passes));
    }
    return new Waits(mended);
  }

  private List<Prerequisite> others(int stage, List<Prerequisite> after) {
    return after.stream()
        .filter(p -> stage(p).stream().noneMatch(target -> waitsForItself(stage, target)))
        .toList();
  }

  /** Whether the stage waits for the target, directly or through others. */
  boolean reaches(int stage, int target) {
    BitSet seen = new BitSet();
    Deque<Integer> open = new ArrayDeque<>(List.of(stage));
    while (!open.isEmpty()) {
      for (int next : requires(open.remove())) {
        if (next == target) {
          return true;
        }
        if (!seen.get(next)) {
          seen.set(next);
          open.add(next);
        }
      }
    }
    return false;
  }

  Set<Integer> requires(int stage) {
    return requires.get(stage);
  }

  Set<Integer> physical(int stage) {
    return physical.get(stage);
  }

  /** Where a stage waits for the step before it in the file merely because it comes later. */
  boolean sequence(int stage) {
    return pass(stage) == 0 && step(stage) > 0 && steps.get(step(stage)).after().isEmpty();
  }

  String key(int stage) {
    StepNames s = steps.get(step(stage));
    return s.tighten() ? s.id() + ":" + s.passes().get(pass(stage)).name() : s.id();
  }

  /** The stage whose completion fulfils the prerequisite: the pass, or a whole step's last pass. */
  OptionalInt stage(Prerequisite wanted) {
    Integer s = stepById.get(wanted.step());
    if (s == null) {
      return OptionalInt.empty();
    }
    List<PassNames> passes = steps.get(s).passes();
    if (wanted.pass().isEmpty()) {
      return OptionalInt.of(last(s));
    }
    for (int p = 0; p < passes.size() && steps.get(s).tighten(); p++) {
      if (passes.get(p).name().equals(wanted.pass().get())) {
        return OptionalInt.of(firstStage.get(s) + p);
      }
    }
    return OptionalInt.empty();
  }

  private int last(int step) {
    return firstStage.get(step) + steps.get(step).passes().size() - 1;
  }

  private void collect(int stage) {
    StepNames step = steps.get(step(stage));
    Set<Integer> hard = new TreeSet<>();
    step.passes().get(pass(stage)).after().forEach(p -> stage(p).ifPresent(hard::add));
    if (pass(stage) > 0) {
      hard.add(stage - 1);
    } else {
      step.after().orElse(List.of()).forEach(p -> stage(p).ifPresent(hard::add));
    }
    Set<Integer> all = new TreeSet<>(hard);
    if (sequence(stage)) {
      all.add(last(step(stage) - 1));
    }
    requires.add(all);
    physical.add(hard);
  }
}
