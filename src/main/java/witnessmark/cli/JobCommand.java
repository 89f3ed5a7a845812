package witnessmark.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.JobText;
import witnessmark.cli.answer.Json;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Declined;
import witnessmark.desk.OpenJob;
import witnessmark.desk.ResumeJob;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.job.Shop;
import witnessmark.ledger.Reading.JobRow;

/** Opens jobs, tells how they stand, and ends them. */
@Command(
    name = "job",
    mixinStandardHelpOptions = true,
    description = "Open a job on a unit, see how it stands, end it.",
    footer = {"", "Example:  witnessmark job status"})
final class JobCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "open",
      mixinStandardHelpOptions = true,
      description = "Open a job on a unit at a station.",
      footer = {
        "",
        "Example:  witnessmark job open --procedure RAM-210 --unit ATR-26-0147 --station bench-1"
      })
  int open(
      @Option(names = "--procedure", required = true) String procedure,
      @Option(names = "--revision", description = "Default: the one released last.")
          String revision,
      @Option(names = "--unit", required = true, description = "The unit's serial or frame number.")
          String unit,
      @Option(names = "--station", required = true) String station,
      @Mixin ByOption by,
      @Mixin DataOption data) {
    OpenJob command =
        Given.valid(
            spec,
            () -> new OpenJob(procedure, Optional.ofNullable(revision), unit, station, by.badge()));
    long n = data.carryOut(command);
    out("Opened job J-" + n + " on unit " + unit + " at " + station + ".");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get("J-" + n));
    return Exit.YES;
  }

  @Command(
      name = "status",
      mixinStandardHelpOptions = true,
      description = {
        "Tell how unfinished jobs stand; with JOB, that job and everything it lacks.",
        "Exit status 1 when the job is incomplete."
      },
      footer = {"", "Example:  witnessmark job status J-4"})
  int status(
      @Parameters(paramLabel = "JOB", arity = "0..1") String job,
      @Mixin DataOption data,
      @Mixin JsonOption json) {
    Shop shop = data.shop();
    PrintWriter out = spec.commandLine().getOut();
    if (job == null) {
      if (json.wanted()) {
        json.print(out, shop.jobs().values().stream().map(JobText::json).toList());
      } else if (shop.jobs().isEmpty()) {
        out("No job is open or suspended.");
      } else {
        shop.jobs().values().forEach(j -> JobText.status(out, j));
      }
      return Exit.YES;
    }
    if (!shop.jobs().containsKey(job)) {
      return ended(data, job, json);
    }
    if (json.wanted()) {
      json.print(out, JobText.json(shop.jobs().get(job)));
    } else {
      JobText.whole(out, shop.jobs().get(job));
    }
    return shop.jobs().get(job).complete() ? Exit.YES : Exit.NO;
  }

  private int ended(DataOption data, String job, JsonOption json) {
    List<JobRow> rows = data.reading(r -> r.jobs(Optional.empty(), Optional.of(job), false));
    if (rows.isEmpty()) {
      throw new Declined("There is no job " + job + "; see: witnessmark job status");
    }
    JobRow row = rows.get(0);
    if (json.wanted()) {
      json.print(
          spec.commandLine().getOut(),
          Json.object(
              "job",
              row.job(),
              "unit",
              row.unit(),
              "status",
              row.status(),
              "ended",
              row.ended().orElse(null)));
    } else {
      out(
          "Job "
              + row.job()
              + " on unit "
              + row.unit()
              + " is "
              + row.status()
              + " (entry "
              + row.ended().map(String::valueOf).orElse("?")
              + "). See: witnessmark trace --job "
              + row.job());
    }
    return row.status().equals("closed") ? Exit.YES : Exit.NO;
  }

  @Command(
      name = "suspend",
      mixinStandardHelpOptions = true,
      description = "Set a job aside, so that its station is free.",
      footer = {"", "Example:  witnessmark job suspend J-4 --because \"waiting for a part\""})
  int suspend(
      @Parameters(paramLabel = "JOB") String job,
      @Option(names = "--because") String because,
      @Mixin ByOption by,
      @Mixin DataOption data) {
    long n =
        data.carryOut(
            Given.valid(spec, () -> new SuspendJob(job, by.badge(), Optional.ofNullable(because))));
    out("Suspended " + job + " (entry " + n + ").");
    return Exit.YES;
  }

  @Command(
      name = "resume",
      mixinStandardHelpOptions = true,
      description = "Take a suspended job up again.",
      footer = {"", "Example:  witnessmark job resume J-4 --station bench-2"})
  int resume(
      @Parameters(paramLabel = "JOB") String job,
      @Option(names = "--station", description = "Default: where it was suspended.") String station,
      @Mixin ByOption by,
      @Mixin DataOption data) {
    ResumeJob command =
        Given.valid(spec, () -> new ResumeJob(job, Optional.ofNullable(station), by.badge()));
    long n = data.carryOut(command);
    out("Resumed " + job + " (entry " + n + ").");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get(job));
    return Exit.YES;
  }

  @Command(
      name = "close",
      mixinStandardHelpOptions = true,
      description = "Close a job of which every fastener and gate stands.",
      footer = {"", "Example:  witnessmark job close J-4 --by badge-07"})
  int close(
      @Parameters(paramLabel = "JOB") String job, @Mixin ByOption by, @Mixin DataOption data) {
    refuseEnded(data, job);
    long n = data.carryOut(new CloseJob(job, by.badge()));
    out("Closed " + job + ": every fastener and gate stands (entry " + n + ").");
    return Exit.YES;
  }

  @Command(
      name = "abandon",
      mixinStandardHelpOptions = true,
      description = "End a job incomplete.",
      footer = {"", "Example:  witnessmark job abandon J-4 --because \"carrier scrapped\""})
  int abandon(
      @Parameters(paramLabel = "JOB") String job,
      @Option(names = "--because", required = true, description = "Why; goes on record.")
          String because,
      @Mixin ByOption by,
      @Mixin DataOption data) {
    refuseEnded(data, job);
    long n = data.carryOut(Given.valid(spec, () -> new AbandonJob(job, by.badge(), because)));
    out("Abandoned " + job + " (entry " + n + ").");
    return Exit.YES;
  }

  /** The shop's state knows unfinished jobs only; the log knows how the others ended. */
  private static void refuseEnded(DataOption data, String job) {
    for (JobRow row : data.reading(r -> r.jobs(Optional.empty(), Optional.of(job), false))) {
      row.ended()
          .ifPresent(
              n -> {
                Entry last = data.reading(r -> EntryJson.read(r.entry(n).orElseThrow().bytes()));
                throw new Declined(
                    "Job "
                        + job
                        + " is "
                        + row.status()
                        + " already, since "
                        + Moments.text(last.at())
                        + " (entry "
                        + n
                        + ").");
              });
    }
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
