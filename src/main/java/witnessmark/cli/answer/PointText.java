package witnessmark.cli.answer;

import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import witnessmark.desk.Tried;
import witnessmark.entry.CalibrationPoint;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.wrench.Deviation;

/** A point of a calibration as it is typed and printed. */
public final class PointText {
  private PointText() {}

  /**
   * Reads {@code "20 N.m: 20.11 20.08"}: what the wrench showed, then what the reference measured,
   * in the same unit.
   *
   * @throws IllegalArgumentException when it has not that form
   */
  public static Tried read(String text) {
    int colon = text.indexOf(':');
    if (colon < 0) {
      throw new IllegalArgumentException(
          "\""
              + text
              + "\" is no point; write what the wrench showed, a colon, and the reference's"
              + " readings, e.g. \"20 N.m: 20.11 20.08 20.10\"");
    }
    Torque indicated = Torque.parse(text.substring(0, colon).strip());
    List<Torque> reference =
        Arrays.stream(text.substring(colon + 1).strip().split("[\\s;]+"))
            .filter(r -> !r.isEmpty())
            .map(r -> new Torque(new Digits(r), indicated.unit()))
            .toList();
    if (reference.isEmpty()) {
      throw new IllegalArgumentException("point \"" + text + "\" has no reading after the colon");
    }
    return new Tried(indicated, reference);
  }

  /** e.g. {@code at 20 N.m: mean deviation +0.52 % of 4 % permissible}. */
  public static String of(CalibrationPoint point) {
    return String.format(
        Locale.ROOT,
        "at %s: mean deviation %+.2f %%, %s %% permissible%s",
        point.indicated(),
        Deviation.mean(point).setScale(2, RoundingMode.HALF_EVEN),
        point.permissible(),
        Deviation.within(point) ? "" : ": OUT OF TOLERANCE");
  }
}
