package witnessmark.pipeline;

import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Judged;
import witnessmark.entry.Moments;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Handover;
import witnessmark.ledger.JobChange;
import witnessmark.ledger.TraceRow;
import witnessmark.torque.Verdict;

/** An entry as the ledger takes it: its bytes, and the rows that follow from it. */
public final class Drafts {
  private Drafts() {}

  public static Draft of(Entry entry) {
    return of(entry, EntryJson.bytes(entry));
  }

  /** The same with other bytes: an entry that somebody signed. */
  static Draft of(Entry entry, byte[] bytes) {
    return new Draft(bytes, trace(entry), job(entry));
  }

  private static TraceRow trace(Entry entry) {
    if (entry instanceof Entry.LogOpened) {
      return row(entry, "log-opened", "shop", null, null, null, null);
    } else if (entry instanceof Entry.LogKeyChanged) {
      return row(entry, Handover.KIND, "shop", null, null, null, null);
    } else if (entry instanceof Entry.OperatorEnrolled e) {
      return row(entry, "operator-enrolled", "shop", null, null, null, e.by().orElse(e.operator()));
    } else if (entry instanceof Entry.OperatorKeyEnrolled e) {
      return row(entry, "operator-key-enrolled", "shop", null, null, null, e.by());
    } else if (entry instanceof Entry.OperatorKeyWithdrawn e) {
      return row(entry, "operator-key-withdrawn", "shop", null, null, null, e.by());
    } else if (entry instanceof Entry.WrenchBound e) {
      return row(entry, "wrench-bound", "shop", null, null, e.wrench(), e.by());
    } else if (entry instanceof Entry.WrenchEnrolled e) {
      return row(entry, "wrench-enrolled", "shop", null, null, e.wrench(), e.by().orElse(null));
    } else if (entry instanceof Entry.CalibrationRuled e) {
      return row(entry, "calibration-ruled", "shop", null, null, null, e.by().orElse(null));
    } else if (entry instanceof Entry.WrenchCalibrated e) {
      return row(entry, "wrench-calibrated", "shop", null, null, e.wrench(), e.by().orElse(null));
    } else if (entry instanceof Entry.WrenchChecked e) {
      return row(entry, "wrench-checked", "none", null, null, e.wrench(), e.by());
    } else if (entry instanceof Entry.CalibrationEnded e) {
      return row(entry, "calibration-ended", "shop", null, null, e.wrench(), e.by().orElse(null));
    } else if (entry instanceof Entry.ProcedureReleased e) {
      return row(entry, "procedure-released", "shop", null, null, null, e.by().orElse(null));
    } else if (entry instanceof Entry.OperatorAtStation e) {
      return row(entry, "operator-at-station", "shop", null, e.station(), null, e.operator());
    } else if (entry instanceof Entry.JobOpened e) {
      return row(entry, "job-opened", "job", e.job(), e.station(), null, e.by().orElse(null));
    } else if (entry instanceof Entry.JobSuspended e) {
      return row(entry, "job-suspended", "job", e.job(), null, null, e.by().orElse(null));
    } else if (entry instanceof Entry.JobResumed e) {
      return row(entry, "job-resumed", "job", e.job(), e.station(), null, e.by().orElse(null));
    } else if (entry instanceof Entry.JobClosed e) {
      return row(entry, "job-closed", "job", e.job(), null, null, e.by().orElse(null));
    } else if (entry instanceof Entry.JobAbandoned e) {
      return row(entry, "job-abandoned", "job", e.job(), null, null, e.by().orElse(null));
    } else if (entry instanceof Entry.Attested e) {
      return row(entry, "attested", "job", e.job(), null, null, e.by());
    } else if (entry instanceof Entry.Measured e) {
      return row(entry, "measured", "job", e.job(), null, null, e.by());
    } else if (entry instanceof Entry.SetAside e) {
      return row(entry, "set-aside", "job", e.job(), null, null, e.by());
    } else if (entry instanceof Entry.Disposed e) {
      return new TraceRow(
          "disposed",
          at(e),
          "job",
          e.job(),
          null,
          e.fastener(),
          null,
          null,
          e.by(),
          null,
          null,
          null);
    } else if (entry instanceof Entry.Assigned e) {
      return decided(e, "assigned", e.job(), e.judged(), e.by());
    } else if (entry instanceof Entry.Reread e) {
      return decided(e, "reread", e.job(), e.judged(), null);
    } else if (entry instanceof Entry.TorqueTaken e) {
      return new TraceRow(
          "torque",
          at(e),
          e.job().isPresent() ? "job" : "none",
          e.job().orElse(null),
          e.station(),
          e.judged().fastener().orElse(null),
          e.event().wrench(),
          e.event().number().isPresent() ? e.event().number().getAsLong() : null,
          e.event().operator().or(e::operator).orElse(null),
          verdict(e.judged()),
          e.judged().effect().code(),
          e.fingerprint());
    } else if (entry instanceof Entry.Scan e) {
      return new TraceRow(
          "scan",
          at(e),
          e.procedure().isPresent() ? "shop" : e.job().isPresent() ? "job" : "none",
          e.job().orElse(null),
          e.station(),
          e.fastener().orElse(null),
          null,
          null,
          e.operator().orElse(null),
          null,
          null,
          null);
    } else if (entry instanceof Entry.Refused e) {
      return row(entry, "refused", "none", null, e.station().orElse(null), null, null);
    } else if (entry instanceof Entry.NotKept e) {
      return row(entry, "not-kept", "none", null, e.station().orElse(null), null, null);
    }
    throw new IllegalStateException("no trace row for " + entry.getClass());
  }

  private static Optional<JobChange> job(Entry entry) {
    if (entry instanceof Entry.JobOpened e) {
      return Optional.of(
          new JobChange.Opened(e.job(), e.unit(), e.procedure(), e.revision(), e.station()));
    } else if (entry instanceof Entry.JobSuspended e) {
      return Optional.of(new JobChange.Moved(e.job(), "suspended", null, false));
    } else if (entry instanceof Entry.JobResumed e) {
      return Optional.of(new JobChange.Moved(e.job(), "open", e.station(), false));
    } else if (entry instanceof Entry.JobClosed e) {
      return Optional.of(new JobChange.Moved(e.job(), "closed", null, true));
    } else if (entry instanceof Entry.JobAbandoned e) {
      return Optional.of(new JobChange.Moved(e.job(), "abandoned", null, true));
    }
    return Optional.empty();
  }

  private static TraceRow row(
      Entry entry,
      String kind,
      String scope,
      String job,
      String station,
      String wrench,
      String operator) {
    return new TraceRow(
        kind, at(entry), scope, job, station, null, wrench, null, operator, null, null, null);
  }

  /** A decision on an event that has an entry of its own. */
  private static TraceRow decided(
      Entry entry, String kind, String job, Judged judged, String operator) {
    return new TraceRow(
        kind,
        at(entry),
        "job",
        job,
        null,
        judged.fastener().orElse(null),
        null,
        null,
        operator,
        verdict(judged),
        judged.effect().code(),
        null);
  }

  private static String verdict(Judged judged) {
    return judged.verdict().map(Verdict::code).orElse(null);
  }

  private static String at(Entry entry) {
    return Moments.text(entry.at());
  }
}
