package witnessmark.doctor;

import java.util.Locale;

/** How a finding is to be taken. */
public enum Mark {
  /** As it should be. */
  GOOD,
  /** Works today; somebody should know or plan. */
  WARN,
  /** Does not work, or is not safe: something is to be done. */
  BAD;

  /** The word that is printed. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }
}
