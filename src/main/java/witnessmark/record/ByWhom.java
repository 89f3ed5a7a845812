package witnessmark.record;

import java.util.Optional;
import witnessmark.entry.Entry;

/** Who caused an entry. */
public final class ByWhom {
  private ByWhom() {}

  /** The badge, where a person did and it was said. */
  public static Optional<String> of(Entry entry) {
    if (entry instanceof Entry.JobOpened e) {
      return e.by();
    } else if (entry instanceof Entry.JobSuspended e) {
      return e.by();
    } else if (entry instanceof Entry.JobResumed e) {
      return e.by();
    } else if (entry instanceof Entry.JobClosed e) {
      return e.by();
    } else if (entry instanceof Entry.JobAbandoned e) {
      return e.by();
    } else if (entry instanceof Entry.Attested e) {
      return Optional.of(e.by());
    } else if (entry instanceof Entry.Measured e) {
      return Optional.of(e.by());
    } else if (entry instanceof Entry.Disposed e) {
      return Optional.of(e.by());
    } else if (entry instanceof Entry.Assigned e) {
      return Optional.of(e.by());
    } else if (entry instanceof Entry.SetAside e) {
      return Optional.of(e.by());
    }
    return Optional.empty();
  }

  /** The badge that decided on a register, where it was said. */
  static Optional<String> registered(Entry entry) {
    if (entry instanceof Entry.ProcedureReleased e) {
      return e.by();
    } else if (entry instanceof Entry.WrenchEnrolled e) {
      return e.by();
    } else if (entry instanceof Entry.WrenchCalibrated e) {
      return e.by();
    } else if (entry instanceof Entry.CalibrationEnded e) {
      return e.by();
    } else if (entry instanceof Entry.OperatorEnrolled e) {
      return e.by();
    } else if (entry instanceof Entry.OperatorKeyEnrolled e) {
      return Optional.of(e.by());
    } else if (entry instanceof Entry.OperatorKeyWithdrawn e) {
      return Optional.of(e.by());
    }
    return Optional.empty();
  }
}
