package witnessmark.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/** What a job still lacks, a line for each pass of a group and each gate. */
public final class Missing {
  private Missing() {}

  /** The open questions, nonconforming fasteners, pending passes and gates, in that order. */
  public static List<String> of(JobState job) {
    List<String> lines = new ArrayList<>();
    job.questions().stream()
        .sorted()
        .forEach(n -> lines.add("entry " + n + " asks which fastener it was (assign " + n + ")"));
    for (int f : job.nonconforming()) {
      Condition c = job.condition(f);
      lines.add(
          job.plan().name(f)
              + (c.scrapped()
                  ? " was scrapped: the job can only be abandoned"
                  : " is nonconforming since entry "
                      + c.nonconformity().getAsLong()
                      + " (dispose)"));
    }
    job.plan().stages().stream().filter(s -> !job.done(s)).forEach(s -> lines.addAll(of(job, s)));
    return lines;
  }

  private static List<String> of(JobState job, Stage stage) {
    if (!(stage.step() instanceof TightenStep step)) {
      return List.of(stage.step().id() + ": to be confirmed or measured, " + stage.step().title());
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
