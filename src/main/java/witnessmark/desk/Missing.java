package witnessmark.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import witnessmark.job.JobState;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/** What a job still lacks, a line for each pass of a group and each gate. */
public final class Missing {
  private Missing() {}

  /** The open questions, nonconforming fasteners, pending passes and gates, in that order. */
  public static List<String> of(JobState job) {
    List<String> lines = new ArrayList<>();
    job.questions().stream().sorted().forEach(n -> lines.add(Awaited.answer(n).toString()));
    for (int f : job.nonconforming()) {
      lines.add(
          job.condition(f).scrapped()
              ? job.plan().name(f) + " was scrapped: the job can only be abandoned"
              : Awaited.disposition(job, f).toString());
    }
    List<Stage> open = job.openStages();
    for (Stage stage : job.plan().stages()) {
      if (!job.done(stage)) {
        lines.addAll(
            Awaited.isGate(stage) ? gate(job, stage, open.contains(stage)) : passes(job, stage));
      }
    }
    return lines;
  }

  private static List<String> gate(JobState job, Stage stage, boolean due) {
    Awaited gate = Awaited.gate(job, stage);
    return List.of(due ? gate.toString() : gate.what() + ": not due yet");
  }

  private static List<String> passes(JobState job, Stage stage) {
    if (!(stage.step() instanceof TightenStep step)) {
      throw new IllegalStateException("no line for " + stage.step().getClass());
    }
    int first = job.plan().first(step);
    List<String> pending =
        IntStream.range(0, step.positions().size())
            .filter(i -> !job.condition(first + i).nonconforming())
            .filter(i -> !job.condition(first + i).stands(stage.pass()))
            .mapToObj(i -> step.positions().get(i))
            .toList();
    String pass = step.passes().get(stage.pass()).name();
    return pending.isEmpty()
        ? List.of()
        : List.of(step.id() + "/" + String.join(", ", pending) + ": " + pass + " pass");
  }
}
