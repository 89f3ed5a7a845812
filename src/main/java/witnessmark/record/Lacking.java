package witnessmark.record;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import witnessmark.job.JobState;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/** What a job lacks, for those who read its record and cannot act on it. */
final class Lacking {
  private Lacking() {}

  /** Undecided readings and fasteners, then passes and gates not done, in the procedure's order. */
  static List<String> of(JobState job) {
    List<String> lines = new ArrayList<>();
    job.questions().stream()
        .sorted()
        .forEach(
            n -> lines.add("Reading of entry " + n + ": nobody said which fastener it was on."));
    for (int f : job.nonconforming()) {
      lines.add(
          job.plan().name(f)
              + (job.condition(f).scrapped()
                  ? ": scrapped."
                  : ": nonconforming since entry "
                      + job.condition(f).nonconformity().getAsLong()
                      + ", and nobody decided on it."));
    }
    for (Stage stage : job.plan().stages()) {
      if (!job.done(stage)) {
        stage(lines, job, stage);
      }
    }
    return lines;
  }

  private static void stage(List<String> lines, JobState job, Stage stage) {
    if (!(stage.step() instanceof TightenStep step)) {
      lines.add(stage.step().id() + ", " + stage.step().title() + ": not done.");
      return;
    }
    int first = job.plan().first(step);
    List<String> pending =
        IntStream.range(0, step.positions().size())
            .filter(i -> !job.condition(first + i).nonconforming())
            .filter(i -> !job.condition(first + i).stands(stage.pass()))
            .mapToObj(i -> step.positions().get(i))
            .collect(Collectors.toList());
    if (!pending.isEmpty()) {
      String pass = step.passes().get(stage.pass()).name();
      lines.add(step.id() + "/" + String.join(", ", pending) + ": " + pass + " pass not done.");
    }
  }
}
