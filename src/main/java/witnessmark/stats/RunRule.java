package witnessmark.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoublePredicate;

/**
 * The four run rules of the Western Electric Statistical Quality Control Handbook (1956): what a
 * point on a control chart shows with those before it. The last three look at one side of the
 * centre line at a time; a point exactly on a line is not beyond it.
 */
public enum RunRule {
  BEYOND_3_SIGMA("one point more than 3 sigma from the centre line", 1, 1, 3),
  TWO_OF_THREE_BEYOND_2_SIGMA("2 of 3 points in a row more than 2 sigma off on one side", 2, 3, 2),
  FOUR_OF_FIVE_BEYOND_1_SIGMA("4 of 5 points in a row more than 1 sigma off on one side", 4, 5, 1),
  EIGHT_ON_ONE_SIDE("8 points in a row on one side of the centre line", 8, 8, 0);

  /**
   * How many points a process in control gives on the average before one of the four rules signals:
   * Champ and Woodall, Technometrics 29 (1987). Rule 1 alone: 370.4.
   */
  public static final double AVERAGE_RUN = 91.75;

  private final String text;
  private final int needed;
  private final int window;
  private final double beyond;

  RunRule(String text, int needed, int window, double beyond) {
    this.text = text;
    this.needed = needed;
    this.window = window;
    this.beyond = beyond;
  }

  /** The rule in a few words, e.g. {@code 8 points in a row on one side of the centre line}. */
  public String text() {
    return text;
  }

  /** Its number in the handbook's order, from 1. */
  public int number() {
    return ordinal() + 1;
  }

  /** The rules by which a point signals, where it itself counts to what they count. */
  static List<RunRule> at(double[] standardised, int first, int last) {
    List<RunRule> shown = new ArrayList<>();
    for (RunRule rule : values()) {
      if (rule.signals(standardised, first, last)) {
        shown.add(rule);
      }
    }
    return shown;
  }

  private boolean signals(double[] z, int first, int last) {
    return signals(z, first, last, v -> v > beyond) || signals(z, first, last, v -> v < -beyond);
  }

  private boolean signals(double[] z, int first, int last, DoublePredicate off) {
    int count = 0;
    for (int i = Math.max(first, last - window + 1); i <= last; i++) {
      count += off.test(z[i]) ? 1 : 0;
    }
    return count >= needed && off.test(z[last]);
  }
}
