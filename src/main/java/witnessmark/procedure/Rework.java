package witnessmark.procedure;

/** What may follow a bad tightening. */
public record Rework() {
  /** Any number of tries, and the fastener may be used again. */
  public static final Rework USUAL = new Rework();
}
