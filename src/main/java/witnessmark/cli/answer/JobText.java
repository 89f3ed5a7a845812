package witnessmark.cli.answer;

import java.io.PrintWriter;
import java.util.Map;
import witnessmark.desk.Awaited;
import witnessmark.desk.Missing;
import witnessmark.job.Condition;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.job.Status;
import witnessmark.report.Table;
import witnessmark.torque.Visible;

/** How a job stands, for people and for programs. */
public final class JobText {
  private JobText() {}

  /** Where it stands, what is next, and the command for each thing that a person can do now. */
  public static void status(PrintWriter out, JobState job) {
    head(out, job);
    commands(out, job);
    out.flush();
  }

  private static void commands(PrintWriter out, JobState job) {
    if (job.status() == Status.OPEN) {
      Awaited.of(job).forEach(a -> out.println(Visible.of("    " + a.command())));
    }
  }

  private static void head(PrintWriter out, JobState job) {
    out.println(
        Visible.of(
            job.job()
                + "  unit "
                + job.unit()
                + "  "
                + job.plan().procedure().id()
                + " revision "
                + job.plan().procedure().revision()
                + "  "
                + job.station()
                + "  "
                + job.status().code()
                + "  "
                + job.passesDone()
                + " of "
                + job.plan().passes()
                + " fastener passes done"));
    out.println(Visible.of("  " + next(job)));
  }

  /** Every fastener, and everything that is missing. */
  public static void whole(PrintWriter out, JobState job) {
    head(out, job);
    if (job.complete()) {
      commands(out, job);
    }
    out.println();
    Table table = new Table("FASTENER", "PASSES", "CONDITION", "LAST ENTRY");
    for (int f = 0; f < job.plan().fasteners(); f++) {
      Condition c = job.condition(f);
      table.add(
          job.plan().name(f),
          c.done() + " of " + job.plan().stepOf(f).passes().size(),
          condition(job, f),
          c.last().isPresent() ? Long.toString(c.last().getAsLong()) : "-");
    }
    out.print(table);
    if (!job.complete()) {
      out.println();
      out.println("Missing:");
      Missing.of(job).forEach(line -> out.println(Visible.of("  " + line)));
    }
    out.flush();
  }

  public static Map<String, Object> json(JobState job) {
    Due due = Due.of(job);
    return Json.object(
        "job", job.job(),
        "unit", job.unit(),
        "procedure", job.plan().procedure().id(),
        "revision", job.plan().procedure().revision(),
        "station", job.station(),
        "status", job.status().code(),
        "done", job.passesDone(),
        "total", job.plan().passes(),
        "complete", job.complete(),
        "state", due.state().code(),
        "next", next(job),
        "missing", Missing.of(job));
  }

  private static String next(JobState job) {
    return job.status() == Status.SUSPENDED
        ? "Suspended. Take it up again: witnessmark job resume " + job.job()
        : Due.of(job).text();
  }

  private static String condition(JobState job, int fastener) {
    Condition c = job.condition(fastener);
    if (c.scrapped()) {
      return "scrapped";
    }
    if (c.nonconforming()) {
      return "nonconforming since entry " + c.nonconformity().getAsLong();
    }
    if (c.rework()) {
      return "to be reworked or replaced";
    }
    boolean tight = c.done() == job.plan().stepOf(fastener).passes().size();
    return tight ? "stands" : c.done() > 0 ? "partly done" : "pending";
  }
}
