package witnessmark.desk;

import java.util.ArrayList;
import java.util.List;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Stage;

/**
 * Something that a job waits for and only a person can do.
 *
 * @param what what is open, half a sentence
 * @param command what to type; words in capitals stand for what the person knows
 */
public record Awaited(String what, String command) {
  private static final String BY = " --by BADGE";
  private static final String BECAUSE = BY + " --because WHY";

  /** Everything that a person can do on the job now, most pressing first. */
  public static List<Awaited> of(JobState job) {
    Due due = Due.of(job);
    List<Awaited> all = new ArrayList<>();
    due.nonconforming().forEach(f -> all.add(disposition(job, f)));
    due.questions().forEach(n -> all.add(answer(n)));
    due.stages().stream().filter(Awaited::isGate).forEach(s -> all.add(gate(job, s)));
    if (!due.scrapped().isEmpty()) {
      all.add(
          new Awaited(
              "the job can only be abandoned", "witnessmark job abandon " + job.job() + BECAUSE));
    }
    if (job.complete()) {
      all.add(new Awaited("the job can be closed", "witnessmark job close " + job.job() + BY));
    }
    return all;
  }

  static Awaited answer(long n) {
    return new Awaited(
        "entry " + n + " asks which fastener it was",
        "witnessmark assign " + n + " --fastener FASTENER" + BECAUSE);
  }

  static Awaited disposition(JobState job, int fastener) {
    String name = job.plan().name(fastener);
    return new Awaited(
        name
            + " is nonconforming since entry "
            + job.condition(fastener).nonconformity().getAsLong(),
        "witnessmark dispose " + job.job() + " " + typed(name) + " --as DECISION" + BECAUSE);
  }

  static boolean isGate(Stage stage) {
    return stage.step() instanceof AttestStep || stage.step() instanceof MeasureStep;
  }

  /** The confirmation or measurement of a step that is due. */
  static Awaited gate(JobState job, Stage stage) {
    String numbers =
        stage.step() instanceof MeasureStep m ? " NUMBER".repeat(m.labels().size()) : "";
    return new Awaited(
        stage.step().id() + ", " + stage.step().title(),
        (stage.step() instanceof MeasureStep ? "witnessmark measure " : "witnessmark attest ")
            + job.job()
            + " "
            + stage.step().id()
            + numbers
            + BY);
  }

  /** As a shell takes it for one word. */
  private static String typed(String name) {
    return name.matches("[A-Za-z0-9._/-]+") ? name : "'" + name.replace("'", "'\\''") + "'";
  }

  @Override
  public String toString() {
    return what + ": " + command;
  }
}
