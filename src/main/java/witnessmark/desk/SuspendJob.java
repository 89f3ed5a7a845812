package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.job.Status;

/** Sets a job aside, so that its station is free. */
public record SuspendJob(String job, Optional<String> by, Optional<String> because)
    implements Command {
  /**
   * @throws IllegalArgumentException when a reason is given and says nothing
   */
  public SuspendJob {
    because.ifPresent(Because::check);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    if (Ask.job(shop, job).status() == Status.SUSPENDED) {
      throw new Declined("Job " + job + " is suspended already.");
    }
    return List.of(new Entry.JobSuspended(at, job, by, because));
  }
}
