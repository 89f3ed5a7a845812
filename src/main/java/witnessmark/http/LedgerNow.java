package witnessmark.http;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.Reading;

/**
 * What the log itself says at a moment, other processes' entries included.
 *
 * @param openJobs unfinished jobs, suspended ones too
 * @param lag entries that were not told yet, by outlet
 */
record LedgerNow(long entries, long openJobs, Map<String, Long> lag) {
  LedgerNow {
    lag = Map.copyOf(lag);
  }

  /** Looks into the log; empty when it cannot be read, which the state of recording tells. */
  static Optional<LedgerNow> look(Observed bridge) {
    try (Reading reading = bridge.opening().get()) {
      return Optional.of(reading.atOneMoment(() -> of(reading, bridge.outlets())));
    } catch (LedgerException e) {
      return Optional.empty();
    }
  }

  private static LedgerNow of(Reading reading, List<String> outlets) {
    long size = reading.size();
    Map<String, Long> lag = new HashMap<>();
    for (String outlet : outlets) {
      lag.put(outlet, Math.max(0, size - reading.cursor("publish:" + outlet)));
    }
    int open = reading.jobs(Optional.empty(), Optional.empty(), true).size();
    return new LedgerNow(size, open, lag);
  }
}
