package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.judge.Judge;
import witnessmark.match.Place;
import witnessmark.match.Placement;
import witnessmark.wrench.Wrench;

/**
 * Says which fastener a torque event belongs to that was credited to none, or that it belongs to
 * none.
 *
 * @param n the event's entry
 * @param taken what that entry says
 * @param fastener which fastener; empty sets the event aside
 */
public record Assign(
    long n,
    Entry.TorqueTaken taken,
    String job,
    Optional<String> fastener,
    String by,
    String because)
    implements Command {
  /**
   * @throws IllegalArgumentException when the reason says nothing
   */
  public Assign {
    Because.check(because);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    if (taken.judged().effect() != Effect.ASKS && taken.judged().effect() != Effect.NONE) {
      throw new Declined(
          "Entry "
              + n
              + " was decided already: "
              + taken.judged().effect().code()
              + taken.judged().fastener().map(f -> " on " + f).orElse("")
              + ".");
    }
    if (state.settled().contains(n)) {
      throw new Declined("Entry " + n + " was assigned or set aside already.");
    }
    if (fastener.isEmpty()) {
      return List.of(new Entry.SetAside(at, job, n, by, because));
    }
    Ask.fastener(state, fastener.get());
    Placement placement =
        Place.named(state, taken.event(), fastener.get(), Reason.ASSIGNED_BY_PERSON);
    Optional<Wrench> wrench = Optional.ofNullable(shop.wrenches().get(taken.event().wrench()));
    Judged judged = Judge.of(state, placement, taken.event(), wrench, taken.moment());
    Optional<String> operator = taken.event().operator().or(taken::operator);
    return List.of(new Entry.Assigned(at, job, n, judged, operator, by, because));
  }
}
