package witnessmark.report;

import java.util.List;
import java.util.stream.Collectors;
import witnessmark.entry.Entry;
import witnessmark.entry.Role;
import witnessmark.entry.Source;
import witnessmark.report.Line.Cells;

/** Fills the rows of entries about the shop's registers and about a job's life. */
final class Registers {
  private Registers() {}

  static void fill(Cells c, Entry entry) {
    if (entry instanceof Entry.LogOpened e) {
      c.set("text", "The log began, signing as " + e.origin() + ".");
    } else if (entry instanceof Entry.LogKeyChanged e) {
      c.set("text", "The log's key was changed; from here on it signs as " + e.to() + ".");
    } else if (entry instanceof Entry.OperatorEnrolled e) {
      c.set("operator", e.operator()).set("text", "Enrolled as " + e.name() + roles(e) + ".");
    } else if (entry instanceof Entry.OperatorKeyEnrolled e) {
      c.set("operator", e.by());
      c.set("text", e.operator() + " decides with the key " + e.publicKey() + " from now on.");
    } else if (entry instanceof Entry.OperatorKeyWithdrawn e) {
      c.set("operator", e.by());
      c.set("text", "The key of " + e.operator() + " is withdrawn: " + e.because());
    } else if (entry instanceof Entry.WrenchBound e) {
      c.set("wrench", e.wrench()).set("operator", e.by());
      c.set("text", "May report from " + sources(e.sources()) + ".");
    } else if (entry instanceof Entry.WrenchEnrolled e) {
      c.set("wrench", e.wrench()).set("operator", e.by());
      c.set(
          "text",
          "Enrolled, "
              + e.low()
              + " to "
              + e.high()
              + ", calibration in force until "
              + e.due()
              + e.certificate().map(s -> ", certificate " + s).orElse("")
              + e.uncertainty().map(u -> ", uncertainty " + u + " %").orElse("")
              + e.resolution().map(r -> ", resolution " + r).orElse("")
              + e.type().map(t -> ", " + t.code()).orElse("")
              + (e.angle().orElse(true) ? "" : ", reports no angle")
              + ".");
    } else if (entry instanceof Entry.CalibrationRuled
        || entry instanceof Entry.WrenchCalibrated
        || entry instanceof Entry.WrenchChecked
        || entry instanceof Entry.CalibrationEnded) {
      CalibrationLines.fill(c, entry);
    } else if (entry instanceof Entry.ProcedureReleased e) {
      c.set("operator", e.by());
      c.set(
          "text",
          "Released " + e.procedure() + " revision " + e.revision() + "." + acknowledged(e));
    } else if (entry instanceof Entry.OperatorAtStation e) {
      c.set("station", e.station()).set("operator", e.operator()).set("text", "Works here now.");
    } else if (entry instanceof Entry.JobOpened e) {
      c.set("job", e.job()).set("station", e.station()).set("operator", e.by());
      c.set(
          "text",
          "Opened on unit " + e.unit() + ", " + e.procedure() + " revision " + e.revision() + ".");
    } else if (entry instanceof Entry.JobSuspended e) {
      c.set("job", e.job()).set("operator", e.by());
      c.set("text", "Suspended" + e.because().map(b -> ": " + b).orElse("."));
    } else if (entry instanceof Entry.JobResumed e) {
      c.set("job", e.job()).set("station", e.station()).set("operator", e.by());
      c.set("text", "Resumed.");
    } else if (entry instanceof Entry.JobClosed e) {
      c.set("job", e.job()).set("operator", e.by()).set("text", "Closed: everything stands.");
    } else if (entry instanceof Entry.JobAbandoned e) {
      c.set("job", e.job()).set("operator", e.by()).set("text", "Abandoned: " + e.because());
    } else {
      throw new IllegalStateException("no row for " + entry.getClass());
    }
  }

  private static String roles(Entry.OperatorEnrolled e) {
    return e.roles().isEmpty()
        ? ""
        : e.roles().stream().map(Role::code).collect(Collectors.joining(", ", " (", ")"));
  }

  private static String sources(List<Source> sources) {
    return sources.isEmpty()
        ? "anywhere"
        : sources.stream().map(Source::toString).collect(Collectors.joining(", "));
  }

  private static String acknowledged(Entry.ProcedureReleased released) {
    return released.acknowledged().stream()
        .map(a -> " Acknowledged " + a.finding() + ": " + a.because() + ".")
        .collect(Collectors.joining());
  }
}
