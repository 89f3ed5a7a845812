package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/** Ends a job incomplete, with a reason. */
public record AbandonJob(String job, Optional<String> by, String because) implements Command {
  /**
   * @throws IllegalArgumentException when the reason says nothing
   */
  public AbandonJob {
    Because.check(because);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    return List.of(
        new Entry.JobAbandoned(at, job, by, because, OptionalLong.of(state.entries() + 1)));
  }
}
