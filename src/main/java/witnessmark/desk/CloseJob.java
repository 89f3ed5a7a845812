package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/** Closes a job of which every fastener and gate stands. */
public record CloseJob(String job, Optional<String> by) implements Command {
  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    if (!state.complete()) {
      throw new Declined(
          "Job "
              + job
              + " cannot be closed yet. Missing:\n  "
              + String.join("\n  ", Missing.of(state)));
    }
    return List.of(new Entry.JobClosed(at, job, by));
  }
}
