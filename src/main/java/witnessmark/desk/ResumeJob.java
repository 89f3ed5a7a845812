package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.job.Status;

/**
 * Takes a suspended job up again.
 *
 * @param station where; the station it was suspended at when empty
 */
public record ResumeJob(String job, Optional<String> station, Optional<String> by)
    implements Command {
  public ResumeJob {
    station.ifPresent(StationName::check);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    if (state.status() != Status.SUSPENDED) {
      throw new Declined(
          "Job "
              + job
              + " is not suspended: it is open at "
              + state.station()
              + ". Go on there, or suspend it there first.");
    }
    String where = station.orElse(state.station());
    shop.active(where)
        .ifPresent(
            other -> {
              throw new Declined(
                  "Station "
                      + where
                      + " has job "
                      + other.job()
                      + "; suspend or close that first.");
            });
    return List.of(new Entry.JobResumed(at, job, where, by));
  }
}
