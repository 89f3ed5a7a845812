package witnessmark.procedure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Tighten steps that a torque reading alone cannot tell apart. */
final class Overlaps {
  private final List<Stage> stages;
  private final Layout layout;

  private Overlaps(List<Stage> stages) {
    this.stages = stages;
    this.layout = new Layout(stages);
  }

  static void find(List<Stage> stages, List<Finding> findings) {
    Overlaps overlaps = new Overlaps(stages);
    String last = "";
    for (Stage stage : stages) {
      if (stage.step() instanceof TightenStep step && !step.id().equals(last)) {
        last = step.id();
        overlaps.of(step, findings);
      }
    }
  }

  private void of(TightenStep step, List<Finding> findings) {
    List<String> others = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Stage a : stages) {
      for (int n = a.number() + 1; n < stages.size() && a.step().id().equals(step.id()); n++) {
        Stage b = stages.get(n);
        if (b.step() instanceof TightenStep other
            && !other.id().equals(step.id())
            && !seen.contains(other.id())
            && layout.together(a, b)
            && Layout.share(a, b)
            && layout.alike(a, b)) {
          seen.add(other.id());
          others.add("\"" + other.id() + "\" (" + band(a) + " beside " + band(b) + ")");
        }
      }
    }
    if (!others.isEmpty()) {
      findings.add(
          new Finding(
              step.id(),
              Doubt.BANDS_OVERLAP,
              "can be open at the same time as "
                  + Sentence.list(others)
                  + ": torque bands overlap and no wrench parts them, so that a reading without a"
                  + " position could belong to either; let one wait for the other, or give them"
                  + " different wrenches"));
    }
  }

  private static String band(Stage stage) {
    Pass pass = Layout.pass(stage);
    return pass.name() + " " + pass.band();
  }
}
