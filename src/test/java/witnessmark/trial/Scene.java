package witnessmark.trial;

import java.util.List;
import java.util.Map;
import wrenchsim.shop.Habits;
import wrenchsim.shop.JointKind;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.wrench.WrenchSpec;

/**
 * One kind of work in the trial.
 *
 * @param title how the table names it
 * @param jobs how many jobs of every hundred are of this kind
 * @param procedure the procedure file's text
 * @param wrenches what is on the rack
 * @param enrolled serial numbers of those that the bridge knows
 * @param joints how the joints of a place answer
 * @param usual how all others answer
 * @param habits how the person goes about it
 * @param mistakes what share of the visits goes wrong, by kind
 * @param telling how well angle or position tells a second hit from a fresh fastener
 */
record Scene(
    String title,
    int jobs,
    String procedure,
    List<WrenchSpec> wrenches,
    List<String> enrolled,
    Map<String, JointKind> joints,
    JointKind usual,
    Habits habits,
    Map<Kind, Double> mistakes,
    Telling telling) {
  /** How well a second hit is told from a fresh fastener. */
  enum Telling {
    ALWAYS,
    OVERLAPPING,
    NEVER
  }
}
