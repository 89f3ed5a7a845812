package witnessmark.procedure;

/** What the wrench must be, and what sits between it and the fastener. */
public record Tool() {
  /** Any wrench, directly on the fastener. */
  public static final Tool ANY = new Tool();
}
