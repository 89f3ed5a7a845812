package witnessmark.record;

import java.util.Optional;
import witnessmark.entry.Entry;

/** The job that an entry names. */
final class JobOf {
  private JobOf() {}

  static Optional<String> entry(Entry entry) {
    if (entry instanceof Entry.TorqueTaken e) {
      return e.job();
    } else if (entry instanceof Entry.Scan e) {
      return e.job();
    } else if (entry instanceof Entry.JobOpened e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.JobSuspended e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.JobResumed e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.JobClosed e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.JobAbandoned e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.Attested e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.Measured e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.Disposed e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.Assigned e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.Reread e) {
      return Optional.of(e.job());
    } else if (entry instanceof Entry.SetAside e) {
      return Optional.of(e.job());
    }
    return Optional.empty();
  }
}
