package witnessmark.procedure;

import java.util.List;

/** Fasteners that could be worn out unnoticed, and confirmations that are never asked for anew. */
final class Wear {
  private Wear() {}

  static void find(TightenStep step, List<Finding> findings) {
    if (step.criticality() == Criticality.DANGER && step.care().rework().tries().isEmpty()) {
      findings.add(
          new Finding(
              step.id(),
              Doubt.NO_TRIES,
              "criticality is danger, but tries is not given, so that a fastener may be pulled"
                  + " again and again without ever being accepted; give it, e.g. tries = 3"));
    }
  }

  static void find(Procedure procedure, AttestStep step, List<Finding> findings) {
    if (step.renew() && waiting(procedure, step).isEmpty()) {
      findings.add(
          new Finding(
              step.id(),
              Doubt.NEVER_RENEWED,
              "renew is true, but no tighten step waits for it directly, so that it is never to be"
                  + " confirmed again; name it in after of the fasteners that it is about"));
    }
  }

  private static List<Stage> waiting(Procedure procedure, AttestStep step) {
    List<Stage> stages = Stages.of(procedure);
    int number = stages.stream().filter(s -> s.step() == step).findFirst().orElseThrow().number();
    return stages.stream()
        .filter(s -> s.step() instanceof TightenStep && s.requires().contains(number))
        .toList();
  }
}
