package witnessmark.record;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.Act;
import witnessmark.job.Plan;
import witnessmark.procedure.Order;
import witnessmark.procedure.TightenStep;

/**
 * Tells the readings whose fastener is a name by count: one of a group that may be done in any
 * order, where no position came. How many of the group were tightened is known, which is not.
 */
final class ByCount {
  private final Plan plan;
  private final List<Act> acts;
  private final Set<Long> counted = new HashSet<>();
  private final Set<TightenStep> groups = new HashSet<>();

  private ByCount(Plan plan, List<Act> acts) {
    this.plan = plan;
    this.acts = acts;
  }

  /**
   * The entries of those readings.
   *
   * @param acts decided ones
   */
  static Set<Long> of(Plan plan, List<Act> acts) {
    ByCount by = new ByCount(plan, acts);
    by.first();
    by.rest();
    return by.counted;
  }

  /** Readings that were counted as one of several. */
  private void first() {
    for (Act act : acts) {
      Judged judged = act.judged().orElseThrow();
      boolean several =
          switch (judged.reason()) {
            case TIGHT_BEFORE -> true;
            case COUNTED_IN_GROUP,
                ONLY_BAND_THAT_FITS,
                ONLY_ANGLE_THAT_FITS,
                ONLY_PLACE_FOR_WRENCH ->
                anyOrder(judged);
            default -> false;
          };
      if (several) {
        counted.add(act.n());
        groups.add(step(judged));
      }
    }
  }

  /** The last one of a group that was counted, and hits on those, are no better known. */
  private void rest() {
    for (Act act : acts) {
      Judged judged = act.judged().orElseThrow();
      if (judged.fastener().isPresent() && !named(act, judged) && groups.contains(step(judged))) {
        counted.add(act.n());
      }
    }
  }

  private static boolean named(Act act, Judged judged) {
    boolean sent =
        act.entry() instanceof Entry.TorqueTaken t
            && (t.event().fastener().isPresent() || t.scanned().isPresent());
    return sent || judged.reason() == Reason.ASSIGNED_BY_PERSON;
  }

  private boolean anyOrder(Judged judged) {
    TightenStep step = step(judged);
    int pass =
        judged
            .pass()
            .flatMap(p -> plan.stage(fastener(judged), p))
            .map(s -> s.pass())
            .orElse(step.passes().size() - 1);
    return step.positions().size() > 1 && step.order(pass).kind() == Order.Kind.ANY;
  }

  private TightenStep step(Judged judged) {
    return plan.stepOf(fastener(judged));
  }

  private int fastener(Judged judged) {
    return plan.fastener(judged.fastener().orElseThrow()).orElseThrow();
  }
}
