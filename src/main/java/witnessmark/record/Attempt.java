package witnessmark.record;

import java.util.Objects;
import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.torque.Direction;
import witnessmark.torque.Verdict;
import witnessmark.wrench.Wrench;

/**
 * A torque event and the decision about it that counts now.
 *
 * @param entry the torque event's entry
 * @param decidedBy the entry of the decision: the event's own, or a later one that placed or read
 *     it anew
 * @param taken the event as it was taken
 * @param judged the decision
 * @param wrench the wrench as the register knew it then, for the moment of the event
 * @param stands whether its pass of the fastener rests on it
 * @param byCount whether its fastener is a name by count: one of its group, and it is not known
 *     which
 */
public record Attempt(
    long entry,
    long decidedBy,
    Entry.TorqueTaken taken,
    Judged judged,
    Optional<Wrench> wrench,
    boolean stands,
    boolean byCount) {
  public Attempt {
    Objects.requireNonNull(taken, "taken");
    Objects.requireNonNull(judged, "judged");
    Objects.requireNonNull(wrench, "wrench");
  }

  /** The same reading of a fastener that is a name by count, or not. */
  Attempt byCount(boolean counted) {
    return new Attempt(entry, decidedBy, taken, judged, wrench, stands, counted);
  }

  /** Whose reading it was, where that is on record. */
  public Optional<String> operator() {
    return taken.event().operator().or(taken::operator);
  }

  /** Whether it was accepted once, and then undone by something that came after. */
  public boolean undone() {
    return judged.effect() == Effect.CREDITED && !stands;
  }

  /**
   * The verdict's word; without a verdict, in brackets, that it was loosened, or the effect's word.
   */
  public String outcome() {
    String otherwise =
        taken.event().direction() == Direction.CCW ? "loosened" : judged.effect().code();
    return judged.verdict().map(Verdict::code).orElse("(" + otherwise + ")");
  }

  /** How its moment is known: whose clock, what was added to it, whether it came late. */
  public String clock() {
    String clock =
        switch (taken.timing().clock()) {
          case "wrench" -> "wrench's clock";
          case "corrected" ->
              "wrench's clock "
                  + taken.timing().offset().map(o -> signed(o.text())).orElse("")
                  + " s";
          case "bridge" -> "bridge's clock";
          default -> taken.timing().clock();
        };
    return taken.timing().tardy() ? clock + ", came late" : clock;
  }

  private static String signed(String offset) {
    return offset.startsWith("-") ? offset : "+" + offset;
  }
}
