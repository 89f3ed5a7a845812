package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/** Closes a job of which every fastener and gate stands. */
public record CloseJob(String job, Optional<String> by) implements Command {
  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    if (!state.complete()) {
      List<String> missing = Missing.of(state);
      throw new Declined(
          "Job " + job + " cannot be closed yet. " + Due.of(state).line(),
          "Job " + job + " cannot be closed yet. Missing:\n  " + String.join("\n  ", missing));
    }
    return List.of(new Entry.JobClosed(at, job, by, OptionalLong.of(state.entries() + 1)));
  }
}
