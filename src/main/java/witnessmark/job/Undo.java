package witnessmark.job;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/** What a fastener's looseness undoes beyond itself. */
public final class Undo {
  private Undo() {}

  /**
   * The stages that physically depend on the fastener's step, directly or through each other, and
   * what is used up with the fastener and must be confirmed again; those that have been worked on,
   * in file order.
   */
  public static List<Stage> of(JobState job, int fastener) {
    TightenStep origin = job.plan().stepOf(fastener);
    Set<Integer> undone = dependent(job.plan().stages(), origin);
    undone.addAll(renewed(job.plan().stages(), origin));
    return job.plan().stages().stream()
        .filter(s -> undone.contains(s.number()) && workedOn(job, s))
        .toList();
  }

  /**
   * Of the step itself a pass is among them only where it depends on another step that is: the
   * step's other fasteners are not loose because one of them is.
   */
  private static Set<Integer> dependent(List<Stage> stages, TightenStep origin) {
    Set<Integer> undone = new HashSet<>();
    boolean grew = true;
    while (grew) {
      grew = false;
      for (Stage s : stages) {
        boolean depends =
            s.physical().stream()
                .anyMatch(
                    p ->
                        undone.contains(p) || s.step() != origin && stages.get(p).step() == origin);
        grew |= depends && undone.add(s.number());
      }
    }
    return undone;
  }

  /** Confirmations of what is used up, for which the step waits directly. */
  private static Set<Integer> renewed(List<Stage> stages, TightenStep origin) {
    Set<Integer> renewed = new HashSet<>();
    for (Stage s : stages) {
      if (s.step() == origin) {
        s.requires().stream()
            .filter(r -> stages.get(r).step() instanceof AttestStep a && a.renew())
            .forEach(renewed::add);
      }
    }
    return renewed;
  }

  private static boolean workedOn(JobState job, Stage stage) {
    return stage.step() instanceof TightenStep step
        ? job.fastenersOf(step).anyMatch(f -> reached(job.condition(f), stage.pass()))
        : job.gates().containsKey(stage.step().id());
  }

  private static boolean reached(Condition condition, int pass) {
    return condition.done() > pass
        || condition.nonconforming() && condition.nonconformingPass() >= pass;
  }
}
