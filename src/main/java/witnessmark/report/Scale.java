package witnessmark.report;

import java.util.Locale;
import witnessmark.stats.Summary;
import witnessmark.torque.TorqueUnit;

/**
 * How many decimals computed torques are told with: so many that their spread has three digits.
 *
 * @param decimals 0 to 6
 */
public record Scale(int decimals, TorqueUnit unit) {
  private static final int MOST = 6;

  public static Scale of(Summary summary, TorqueUnit unit) {
    double measure = summary.s() > 0 ? summary.s() : Math.abs(summary.mean()) / 100;
    int digits = measure > 0 ? 2 - (int) Math.floor(Math.log10(measure)) : 2;
    return new Scale(Math.max(0, Math.min(MOST, digits)), unit);
  }

  public String number(double value) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  public String text(double value) {
    return number(value) + " " + unit;
  }

  public String range(double low, double high) {
    return number(low) + " to " + text(high);
  }
}
