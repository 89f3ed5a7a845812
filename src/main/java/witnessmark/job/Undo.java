package witnessmark.job;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/** What a fastener's looseness undoes beyond itself. */
public final class Undo {
  private Undo() {}

  /**
   * The stages of other steps that physically depend on the fastener's step, directly or through
   * each other, and have been worked on; in file order.
   */
  public static List<Stage> of(JobState job, int fastener) {
    TightenStep origin = job.plan().stepOf(fastener);
    List<Stage> stages = job.plan().stages();
    Set<Integer> loose = new HashSet<>();
    stages.stream().filter(s -> s.step() == origin).forEach(s -> loose.add(s.number()));
    Set<Integer> undone = new HashSet<>();
    boolean grew = true;
    while (grew) {
      grew = false;
      for (Stage s : stages) {
        if (s.step() != origin
            && !undone.contains(s.number())
            && s.physical().stream().anyMatch(loose::contains)) {
          undone.add(s.number());
          loose.add(s.number());
          grew = true;
        }
      }
    }
    return stages.stream().filter(s -> undone.contains(s.number()) && workedOn(job, s)).toList();
  }

  private static boolean workedOn(JobState job, Stage stage) {
    return stage.step() instanceof TightenStep step
        ? job.fastenersOf(step).anyMatch(f -> job.condition(f).done() > stage.pass())
        : job.gates().containsKey(stage.step().id());
  }
}
