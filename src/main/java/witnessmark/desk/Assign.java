package witnessmark.desk;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Role;
import witnessmark.job.Act;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.judge.Decide;
import witnessmark.judge.Rereading;

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
    if (state.settled().contains(n)) {
      throw new Declined("Entry " + n + " was assigned or set aside already.");
    }
    Optional<Act> fact = History.of(state, n);
    Judged standing = fact.flatMap(Act::judged).orElse(taken.judged());
    if (standing.effect() != Effect.ASKS && standing.effect() != Effect.NONE) {
      throw new Declined(
          "Entry "
              + n
              + " was decided already: "
              + standing.effect().code()
              + standing.fastener().map(f -> " on " + f).orElse("")
              + ".");
    }
    if (fastener.isEmpty()) {
      Optional<Role> role = OnNone.role(shop, state, standing, taken.event(), by);
      return List.of(new Entry.SetAside(at, job, n, by, role, because));
    }
    Ask.fastener(state, fastener.get());
    JobState then = History.met(state, n, taken.place());
    Judged judged = Decide.assigned(shop, then, taken, fastener.get());
    Entry.Assigned assigned =
        new Entry.Assigned(
            at,
            job,
            n,
            fact.isPresent() ? Optional.empty() : Optional.of(taken.place()),
            judged,
            taken.event().operator().or(taken::operator),
            by,
            because);
    List<Entry> entries = new ArrayList<>(List.of(assigned));
    JobState changed = shop.after(shop.size(), assigned).jobs().get(job);
    entries.addAll(Rereading.of(shop, changed, n, shop.size(), at));
    return entries;
  }
}
