package witnessmark.scan;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongFunction;
import java.util.stream.Collectors;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Declined;
import witnessmark.desk.Few;
import witnessmark.desk.ScannerCommands;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.job.Status;
import witnessmark.procedure.AttestStep;

/** A code that is a command about the job at the station. */
public enum CommandCode {
  /** Tells how the job stands. */
  STATUS,
  /** Confirms the one attest step that is due. */
  ATTEST,
  /** The next position scanned answers the oldest question. */
  ANSWER,
  /** The reading that was to be answered belongs to no fastener. */
  SET_ASIDE,
  /** Sets the job aside. */
  SUSPEND,
  /** Closes the job. */
  CLOSE;

  /** What the scanner reads, e.g. {@code wm:set-aside}. */
  public String code() {
    return ScannerCommands.PREFIX + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Meant read(
      Shop shop, Code code, Optional<JobState> job, LongFunction<Optional<Entry>> log) {
    CommandCode command =
        Arrays.stream(values())
            .filter(c -> c.code().equals(code.text()))
            .findFirst()
            .orElseThrow(() -> new Declined(unknown()));
    if (job.isEmpty()) {
      return idle(shop, code, command);
    }
    JobState open = job.get();
    return switch (command) {
      case STATUS -> status(shop, open);
      case ATTEST -> StepCode.attested(shop, code, open, due(open));
      case ANSWER -> new Answer(shop, code, open, log).announce();
      case SET_ASIDE -> new Answer(shop, code, open, log).setAside();
      case SUSPEND -> suspended(shop, code, open);
      case CLOSE -> closed(shop, code, open);
    };
  }

  private static String unknown() {
    return "No command is called so. Scan one of "
        + Arrays.stream(values()).map(CommandCode::code).collect(Collectors.joining(", "))
        + ".";
  }

  private static Meant idle(Shop shop, Code code, CommandCode command) {
    String none = "No job is open at " + code.station() + ". ";
    if (command != STATUS) {
      throw new Declined(none + "Scan a unit or a job first.");
    }
    List<String> waiting =
        shop.jobs().values().stream()
            .filter(j -> j.status() == Status.SUSPENDED && j.station().equals(code.station()))
            .map(j -> j.job() + " on unit " + j.unit())
            .sorted()
            .toList();
    String suspended = waiting.isEmpty() ? "" : "Suspended here: " + Few.of(waiting) + ". ";
    return Meant.of(Meaning.STATUS, none + suspended + "Scan a unit or a job.");
  }

  private static Meant status(Shop shop, JobState job) {
    return Meant.of(
        Meaning.STATUS,
        job.job()
            + " on unit "
            + job.unit()
            + ": "
            + job.passesDone()
            + " of "
            + job.plan().passes()
            + " passes done. "
            + Acted.next(shop, job.job()));
  }

  private static String due(JobState job) {
    List<String> steps =
        Due.of(job).stages().stream()
            .filter(s -> s.step() instanceof AttestStep)
            .map(s -> s.step().id())
            .toList();
    if (steps.isEmpty()) {
      throw new Declined("Nothing is to be confirmed now. " + Due.of(job).line());
    }
    if (steps.size() > 1) {
      throw new Declined(
          "Several steps are to be confirmed: " + Few.of(steps) + ". Scan the step itself.");
    }
    return steps.get(0);
  }

  private static Meant suspended(Shop shop, Code code, JobState job) {
    Acted acted =
        Acted.by(new SuspendJob(job.job(), code.by(shop), Optional.empty()), shop, code.at());
    String text =
        "Suspended "
            + job.job()
            + " on unit "
            + job.unit()
            + ". Scan a unit or a job to go on at "
            + code.station()
            + ".";
    return Meant.of(Meaning.SUSPEND, text, acted.entries());
  }

  private static Meant closed(Shop shop, Code code, JobState job) {
    Acted acted = Acted.by(new CloseJob(job.job(), code.by(shop)), shop, code.at());
    String text =
        "Closed " + job.job() + " on unit " + job.unit() + ": every fastener and gate stands.";
    return Meant.of(Meaning.CLOSE, text, acted.entries());
  }
}
