package witnessmark.log;

/** How much is logged. */
public enum Volume {
  ERROR,
  WARN,
  INFO,
  DEBUG
}
