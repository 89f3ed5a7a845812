package witnessmark.log;

import java.util.Locale;

/** How much is logged. */
public enum Volume {
  ERROR,
  WARN,
  INFO,
  DEBUG;

  /** The word on the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
