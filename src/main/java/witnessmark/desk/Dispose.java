package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.job.Undo;
import witnessmark.procedure.Stage;

/** Decides what happens to a nonconforming fastener. */
public record Dispose(
    String job, String fastener, Disposition disposition, String by, String because)
    implements Command {
  /**
   * @throws IllegalArgumentException when the reason says nothing
   */
  public Dispose {
    Because.check(because);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    int f = Ask.fastener(state, fastener);
    Condition condition = state.condition(f);
    if (!condition.nonconforming()) {
      throw new Declined("Fastener " + fastener + " is not nonconforming: nothing to dispose.");
    }
    if (condition.scrapped()) {
      throw new Declined("Fastener " + fastener + " was scrapped: abandon the job.");
    }
    boolean loosens = disposition == Disposition.REWORK || disposition == Disposition.REPLACE;
    List<String> undoes = loosens ? Undo.of(state, f).stream().map(Stage::key).toList() : List.of();
    return List.of(
        new Entry.Disposed(
            at,
            job,
            fastener,
            condition.nonconformity().getAsLong(),
            disposition,
            undoes,
            by,
            because));
  }
}
