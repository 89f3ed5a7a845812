package wrenchsim.shop;

/**
 * How a person goes about it.
 *
 * @param anyOrder whether one of several fasteners is picked by chance, not the first listed; where
 *     a group goes in any order, any that the person has not done
 * @param gatesFirst whether what is to be confirmed or measured is waited for, though something
 *     could be tightened meanwhile
 * @param scans whether the label beside the fastener is scanned before each tightening
 */
public record Habits(boolean anyOrder, boolean gatesFirst, boolean scans) {
  /** The first listed, as soon as it can be done, and no scanning. */
  public static final Habits PLAIN = new Habits(false, false, false);
}
