package witnessmark.torque;

import java.util.Locale;

/** The two types of hand torque tool that ISO 6789 tells apart. */
public enum WrenchKind {
  /** Type I: it shows the torque that is reached. */
  INDICATING,
  /** Type II: it signals when the torque it is set to is reached. */
  SETTING;

  /** {@code indicating} or {@code setting}. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * @throws IllegalArgumentException for anything but {@code indicating} and {@code setting}
   */
  public static WrenchKind of(String code) {
    for (WrenchKind k : values()) {
      if (k.code().equals(code)) {
        return k;
      }
    }
    throw new IllegalArgumentException(
        "wrench kind \"" + code + "\" is unknown; indicating or setting is allowed");
  }
}
