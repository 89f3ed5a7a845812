package witnessmark.judge;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.Act;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/** Decides again what stands after a change in a job's past. */
public final class Rereading {
  private Rereading() {}

  /**
   * One entry for each later torque event whose decision is another now. What a person has placed
   * or set aside stays.
   *
   * @param changed the job with the change in it
   * @param since the torque event's entry that is new or decided otherwise
   * @param because the entry that made the change known
   */
  public static List<Entry> of(Shop shop, JobState changed, long since, long because, Instant at) {
    List<Entry> again = new ArrayList<>();
    List<Act> later = History.since(changed, since);
    if (later.isEmpty()) {
      return again;
    }
    JobState state = History.after(changed, since);
    for (Act act : later) {
      Act now = act;
      if (act.entry() instanceof Entry.TorqueTaken t
          && !act.byPerson()
          && !changed.settled().contains(act.n())
          && t.judged().reason() != Reason.PERHAPS_REPEATED) {
        Judged judged = Decide.of(shop, state, t, t.scanned());
        if (!same(judged, act.judged().orElseThrow())) {
          Judged told =
              judged.withText("Read again because of entry " + because + ". " + judged.text());
          now = act.decided(told);
          again.add(new Entry.Reread(at, changed.job(), act.n(), because, told));
        }
      }
      state = History.next(state, now);
    }
    return again;
  }

  private static boolean same(Judged one, Judged other) {
    return one.withText("").equals(other.withText(""));
  }
}
