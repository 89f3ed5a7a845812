package witnessmark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Pull;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/**
 * What may or must be done on a job now.
 *
 * @param state the first that applies, in the order of the constants
 * @param scrapped fasteners that were given up
 * @param nonconforming fasteners that wait for a disposition
 * @param questions entries that ask which fastener they were about
 * @param stages open stages with something to do, in file order
 * @param text the next thing to do, in a sentence, and how many others wait for a person
 */
public record Due(
    State state,
    List<Integer> scrapped,
    List<Integer> nonconforming,
    List<Long> questions,
    List<Stage> stages,
    String text) {
  private static final int LINE = 130;

  /** What a job waits for, most pressing first. */
  public enum State {
    DISPOSE,
    ANSWER,
    TIGHTEN,
    ATTEST,
    MEASURE,
    COMPLETE;

    public String code() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What is due on the job. */
  public static Due of(JobState job) {
    List<Integer> scrapped = new ArrayList<>();
    List<Integer> waiting = new ArrayList<>();
    job.nonconforming().forEach(f -> (job.condition(f).scrapped() ? scrapped : waiting).add(f));
    List<Long> questions = job.questions().stream().sorted().toList();
    List<Stage> stages =
        job.openStages().stream()
            .filter(s -> !(s.step() instanceof TightenStep) || !job.next(s).isEmpty())
            .toList();
    State state = state(job, questions, stages);
    String text = text(job, state, scrapped, waiting, questions, stages);
    long people =
        (scrapped.isEmpty() ? 0 : 1)
            + waiting.size()
            + questions.size()
            + stages.stream().filter(s -> !(s.step() instanceof TightenStep)).count();
    boolean first = state != State.TIGHTEN && state != State.COMPLETE;
    text += more(job, first ? people - 1 : people);
    return new Due(state, scrapped, waiting, questions, stages, text);
  }

  /** The text on one line, cut where it is longer. */
  public String line() {
    String first = text.lines().findFirst().orElse("");
    return first.length() <= LINE ? first : first.substring(0, LINE - 1).stripTrailing() + "…";
  }

  /** How much a person has to do beside what the sentence before it says. */
  private static String more(JobState job, long count) {
    if (count == 0) {
      return "";
    }
    String wait = count == 1 ? " more thing waits" : " more things wait";
    return " " + count + wait + " for a person (job status " + job.job() + ").";
  }

  private static State state(JobState job, List<Long> questions, List<Stage> stages) {
    if (!job.nonconforming().isEmpty()) {
      return State.DISPOSE;
    }
    if (!questions.isEmpty()) {
      return State.ANSWER;
    }
    if (stages.stream().anyMatch(s -> s.step() instanceof TightenStep)) {
      return State.TIGHTEN;
    }
    if (stages.stream().anyMatch(s -> s.step() instanceof AttestStep)) {
      return State.ATTEST;
    }
    return stages.isEmpty() ? State.COMPLETE : State.MEASURE;
  }

  private static String text(
      JobState job,
      State state,
      List<Integer> scrapped,
      List<Integer> waiting,
      List<Long> questions,
      List<Stage> stages) {
    return switch (state) {
      case DISPOSE ->
          waiting.isEmpty()
              ? job.plan().name(scrapped.get(0)) + " was scrapped: abandon the job."
              : job.plan().name(waiting.get(0))
                  + " is nonconforming: leave it as it is until somebody has decided (dispose).";
      case ANSWER -> "Say which fastener entry " + questions.get(0) + " was about (assign).";
      case TIGHTEN -> tighten(job, stages);
      case ATTEST, MEASURE -> person(stages.get(0));
      case COMPLETE -> "Everything is done: close the job.";
    };
  }

  private static String tighten(JobState job, List<Stage> stages) {
    Stage stage =
        stages.stream().filter(s -> s.step() instanceof TightenStep).findFirst().orElseThrow();
    TightenStep step = (TightenStep) stage.step();
    Pass pass = step.passes().get(stage.pass());
    List<Integer> next = job.next(stage);
    String where =
        next.size() == 1
            ? job.plan().name(next.get(0))
            : "any of " + next.size() + " left in " + step.id();
    String aim =
        pass.target().map(t -> t + " (" + pass.band() + ")").orElse(pass.band().toString());
    String wrench =
        step.wrenches().isEmpty() ? "" : ", with " + String.join(" or ", step.wrenches());
    return "Next: "
        + where
        + ", "
        + pass.name()
        + " pass, "
        + aim
        + pull(step, pass)
        + wrench
        + ".";
  }

  /** What the display shows then, where an adapter makes it another number. */
  private static String pull(TightenStep step, Pass pass) {
    return step.care()
        .tool()
        .adapter()
        .map(a -> Pull.of(pass, a))
        .map(
            p ->
                p.target()
                    .map(t -> t + " " + pass.target().orElseThrow().unit())
                    .orElse(
                        p.low()
                            + " "
                            + pass.band().low().unit()
                            + " to "
                            + p.high()
                            + " "
                            + pass.band().high().unit()))
        .map(shown -> ", through the adapter: pull to " + shown)
        .orElse("");
  }

  private static String person(Stage stage) {
    if (stage.step() instanceof AttestStep a) {
      return "Confirm (attest " + a.id() + "): " + a.statement();
    }
    if (stage.step() instanceof MeasureStep m) {
      return "Measure (measure "
          + m.id()
          + "): "
          + String.join(", ", m.labels())
          + ", "
          + m.low()
          + " to "
          + m.high()
          + " "
          + m.unit()
          + m.spread().map(s -> ", differing by at most " + s).orElse("")
          + ".";
    }
    throw new IllegalStateException("no sentence for " + stage.step().getClass());
  }
}
