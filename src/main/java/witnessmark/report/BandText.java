package witnessmark.report;

import witnessmark.torque.Band;
import witnessmark.torque.Torque;

/** A band as people read it: the unit once where both limits share it. */
public final class BandText {
  private BandText() {}

  /** {@code of("29.7 N.m", "36.3 N.m")} is {@code 29.7 to 36.3 N.m}. */
  public static String of(String low, String high) {
    return new Band(Torque.parse(low), Torque.parse(high)).toString();
  }
}
