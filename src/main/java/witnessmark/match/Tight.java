package witnessmark.match;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Pull;
import witnessmark.procedure.Stage;
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/**
 * The fasteners that a reading may have hit again: held tight enough for it, and of a step that the
 * wrench is allowed on.
 *
 * @param any whether there is one at all
 * @param newest the one that this wrench pulled last, else anybody, of those whose band the reading
 *     is not below; an ordinary hit below it shows nothing
 * @param side where the reading lies beside the band of the newest
 */
record Tight(boolean any, OptionalInt newest, Side side) {

  /**
   * Those of the group that is expected count whatever they are held at, where the reading is above
   * its band: a hand that slips past the band does so on a tight one as well.
   *
   * @param but the fastener that is expected, which is not meant here; −1 for none
   */
  static Tight of(JobState job, TorqueEvent event, int but) {
    BigDecimal least = Held.least(event);
    boolean any = false;
    int newest = -1;
    Pull newestPull = null;
    Side newestSide = Side.BELOW;
    List<Step> steps = job.plan().procedure().steps();
    // From the end: the newest is mostly found first, and what is older needs no closer look.
    for (int s = steps.size() - 1; s >= 0; s--) {
      if (!(steps.get(s) instanceof TightenStep step) || !Bands.allows(step, event.wrench())) {
        continue;
      }
      Side[] sides = Bands.sides(step, event.torque());
      if (any && allBelow(sides)) {
        continue;
      }
      int first = job.plan().first(step);
      for (int f = first + step.positions().size() - 1; f >= first; f--) {
        Condition condition = job.condition(f);
        if (f == but || condition.pull().isEmpty()) {
          continue;
        }
        Pull pull = condition.pull().get();
        Side side = sides[last(condition)];
        boolean counts =
            side != Side.BELOW
                && condition.stands(0)
                && (newest < 0 || later(event, pull, newestPull));
        if ((any && !counts)
            || !(couldBe(condition, least) || (but >= 0 && slippedOn(job, event, f, but)))) {
          continue;
        }
        any = true;
        if (counts) {
          newest = f;
          newestPull = pull;
          newestSide = side;
        }
      }
    }
    return new Tight(any, newest < 0 ? OptionalInt.empty() : OptionalInt.of(newest), newestSide);
  }

  /**
   * Whether a reading above the band of one that is expected may be a slip on this one: of its
   * group, and done where the expected one is not.
   */
  static boolean slippedOn(JobState job, TorqueEvent event, int fastener, int expected) {
    return job.plan().stepOf(fastener) == job.plan().stepOf(expected)
        && job.condition(fastener).done() > job.condition(expected).done()
        && above(job, event, expected);
  }

  private static boolean allBelow(Side[] sides) {
    for (Side side : sides) {
      if (side != Side.BELOW) {
        return false;
      }
    }
    return true;
  }

  private static boolean above(JobState job, TorqueEvent event, int but) {
    int pass = job.condition(but).done();
    TightenStep step = job.plan().stepOf(but);
    return pass < step.passes().size() && step.side(pass, event.torque()) == Side.ABOVE;
  }

  /** The others of the newest one's group that it could be as well. */
  static List<String> others(JobState job, TorqueEvent event, int newest, int but) {
    BigDecimal least = Held.least(event);
    TightenStep step = job.plan().stepOf(newest);
    int first = job.plan().first(step);
    Side[] sides = Bands.sides(step, event.torque());
    List<String> names = new ArrayList<>();
    for (int f = first; f < first + step.positions().size(); f++) {
      Condition condition = job.condition(f);
      if (f != newest
          && f != but
          && condition.stands(0)
          && couldBe(condition, least)
          && sides[last(condition)] == Side.INSIDE) {
        names.add(job.plan().name(f));
      }
    }
    return names;
  }

  /**
   * Whether the fastener is to be reworked or replaced, and the angle shows that it is as tight as
   * it was.
   */
  static boolean unreplaced(JobState job, int fastener, TorqueEvent event) {
    Condition condition = job.condition(fastener);
    if (!toReplace(condition) || event.angle().isEmpty()) {
      return false;
    }
    Stage stage = job.plan().stage(fastener, condition.pull().get().pass());
    BigDecimal most = TightTurn.most(job, stage, condition.pull().get().held(), event);
    return most.signum() > 0 && event.angle().get().degrees().value().compareTo(most) <= 0;
  }

  /** Whether it is to be reworked or replaced and was not seen undone since. */
  static boolean toReplace(Condition condition) {
    return condition.rework() && condition.pull().isPresent();
  }

  /** The fastener that this wrench pulled last, whatever is known of it now. */
  static OptionalInt lastPulledBy(JobState job, String wrench) {
    return IntStream.range(0, job.plan().fasteners())
        .filter(f -> job.condition(f).pull().filter(p -> p.by(wrench)).isPresent())
        .reduce((a, b) -> newer(job, b, a) ? b : a);
  }

  /** The pass in which the fastener was last made tight. */
  static int last(Condition condition) {
    return Math.max(0, condition.done() - 1);
  }

  static boolean couldBe(Condition condition, BigDecimal least) {
    return condition.pull().isPresent() && condition.pull().get().held().compareTo(least) >= 0;
  }

  private static boolean later(TorqueEvent event, Pull one, Pull other) {
    boolean mine = one.by(event.wrench());
    return mine == other.by(event.wrench()) ? one.newerThan(other) : mine;
  }

  static boolean newer(JobState job, int one, int other) {
    return job.condition(one)
        .pull()
        .orElseThrow()
        .newerThan(job.condition(other).pull().orElseThrow());
  }
}
