package witnessmark.entry;

/** By which rule a torque was decided against its limits. */
public enum Rule implements Word {
  /** Within the limits is accepted, whatever the uncertainty: guard band 0. */
  SIMPLE,
  /** Accepted only where the guard band lies within the limits, too. */
  GUARDED
}
