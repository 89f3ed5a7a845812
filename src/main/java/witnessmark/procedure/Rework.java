package witnessmark.procedure;

import java.util.OptionalInt;

/**
 * What may follow a bad tightening.
 *
 * @param singleUse whether the fastener may be tightened once only: loosened after that, it is
 *     replaced
 * @param tries how many pulls of a pass may fail before somebody must decide; empty for any number
 */
public record Rework(boolean singleUse, OptionalInt tries) {
  /** Any number of tries, and the fastener may be used again. */
  public static final Rework USUAL = new Rework(false, OptionalInt.empty());

  public Rework {
    if (tries.isPresent() && tries.getAsInt() < 1) {
      throw new IllegalArgumentException("at least one try is needed");
    }
  }
}
