package witnessmark.procedure;

/** What a failure of the joint would mean. */
public enum Criticality {
  /** Danger to life or limb. */
  DANGER,
  /** Loss of function. */
  FUNCTION,
  /** Anything less. */
  OTHER;

  /** {@code danger}, {@code function} or {@code other}. */
  public String code() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
