package witnessmark.publish;

import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.JobState;

/** The messages as the publisher writes them, for whoever stands in for a broker. */
public final class Told {
  private Told() {}

  public static byte[] expect(String station, Optional<JobState> job) {
    return ExpectMessage.of(station, job);
  }

  public static byte[] verdict(long n, Entry.TorqueTaken entry) {
    return VerdictEvent.of("trial", n, entry);
  }

  public static byte[] verdict(long n, Entry.Assigned entry, Entry.TorqueTaken taken) {
    return VerdictEvent.of("trial", n, entry, taken);
  }

  public static byte[] verdict(long n, Entry.Reread entry, Entry.TorqueTaken taken) {
    return VerdictEvent.of("trial", n, entry, taken);
  }
}
