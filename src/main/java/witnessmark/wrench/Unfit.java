package witnessmark.wrench;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import witnessmark.entry.Objection;
import witnessmark.procedure.Doubt;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;

/** Passes that enrolled wrenches cannot do, whatever they will read. */
public final class Unfit {
  private Unfit() {}

  /**
   * A finding for each enrolled wrench that a step names and that cannot do one of its passes; and
   * where a step names none, for each pass that no enrolled wrench can do.
   *
   * @param wrenches as they are enrolled now; where there is none, there is no finding
   */
  public static List<Finding> findings(Procedure procedure, Collection<Wrench> wrenches) {
    List<Finding> findings = new ArrayList<>();
    for (Step each : procedure.steps()) {
      if (each instanceof TightenStep step && !wrenches.isEmpty()) {
        step.passes().forEach(p -> find(step, p, wrenches, findings));
      }
    }
    return List.copyOf(findings);
  }

  private static void find(
      TightenStep step, Pass pass, Collection<Wrench> wrenches, List<Finding> findings) {
    if (step.wrenches().isEmpty()) {
      if (wrenches.stream().noneMatch(w -> fit(w, step, pass))) {
        findings.add(
            new Finding(
                step.id(),
                Doubt.WRENCH_UNFIT,
                "no enrolled wrench can do pass \"" + pass.name() + "\" (" + pass.band() + ")"));
      }
      return;
    }
    wrenches.stream()
        .filter(w -> step.wrenches().contains(w.serial()) && !fit(w, step, pass))
        .forEach(
            w ->
                findings.add(
                    new Finding(
                        step.id(),
                        Doubt.WRENCH_UNFIT,
                        w.serial()
                            + " as it is enrolled cannot do pass \""
                            + pass.name()
                            + "\" ("
                            + pass.band()
                            + "): "
                            + words(Fitness.of(w, pass, step.care().tool())))));
  }

  /** Whether nothing speaks against the wrench before any reading. */
  public static boolean fit(Wrench wrench, TightenStep step, Pass pass) {
    return Fitness.of(wrench, pass, step.care().tool()).isEmpty();
  }

  private static String words(List<Objection> objections) {
    return objections.stream().map(Objection::code).collect(Collectors.joining(", "));
  }
}
