package witnessmark.pipeline;

import java.util.List;
import java.util.Optional;
import witnessmark.decode.Scanned;
import witnessmark.entry.Entry;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/** Decides what a scan means at its station. */
final class Scans {
  private Scans() {}

  static Outcome take(Shop shop, String station, Arrival arrival, Scanned scanned) {
    String scan = scanned.scan();
    if (shop.operators().containsKey(scan)) {
      Entry noted =
          entry(
              station,
              arrival,
              scanned,
              Optional.empty(),
              Optional.empty(),
              "operator",
              scan + " works at " + station + " from now on.");
      Entry stands = new Entry.OperatorAtStation(arrival.at(), station, scan);
      return new Outcome(List.of(noted, stands), Optional.empty(), false);
    }
    Optional<JobState> job = shop.active(station).filter(j -> j.plan().fastener(scan).isPresent());
    if (job.isPresent()) {
      return Outcome.recorded(
          entry(
              station,
              arrival,
              scanned,
              job.map(JobState::job),
              Optional.of(scan),
              "fastener",
              "The next reading at " + station + " is for " + scan + "."));
    }
    return Outcome.recorded(
        entry(
            station,
            arrival,
            scanned,
            Optional.empty(),
            Optional.empty(),
            "nothing",
            "Neither an enrolled badge nor a fastener of the job at " + station + "."));
  }

  private static Entry entry(
      String station,
      Arrival arrival,
      Scanned scanned,
      Optional<String> job,
      Optional<String> fastener,
      String meaning,
      String text) {
    return new Entry.Scan(
        arrival.at(),
        station,
        arrival.source(),
        scanned.scan(),
        scanned.operator(),
        job,
        fastener,
        meaning,
        text);
  }
}
