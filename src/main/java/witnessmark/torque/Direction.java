package witnessmark.torque;

/** Which way the wrench turned, seen along the wrench's drive. */
public enum Direction {
  /** Clockwise: tightening, for right-hand threads. */
  CW,
  /** Counter-clockwise: loosening, for right-hand threads. */
  CCW;

  /** {@code cw} or {@code ccw}, as written in messages. */
  public String code() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  /**
   * @throws IllegalArgumentException for anything but {@code cw} and {@code ccw}
   */
  public static Direction of(String code) {
    for (Direction d : values()) {
      if (d.code().equals(code)) {
        return d;
      }
    }
    throw new IllegalArgumentException(
        "direction \"" + code + "\" is unknown; cw or ccw is allowed");
  }
}
