package witnessmark.benchmark;

import java.util.Locale;

/** The report on standard output. */
final class Print {
  private Print() {}

  static void title(String text) {
    System.out.println("\n" + text);
  }

  static void note(String text) {
    System.out.println("  " + text);
  }

  /** A median between the least and the most of the rounds. */
  static void line(String what, Figures figures, String unit) {
    System.out.printf(
        Locale.ROOT,
        "  %-52s %10s %-8s (%s to %s)%n",
        what,
        number(figures.median()),
        unit,
        number(figures.least()),
        number(figures.most()));
  }

  private static String number(double value) {
    return String.format(
        Locale.ROOT, value >= 1000 ? "%,.0f" : value >= 100 ? "%.0f" : "%.2f", value);
  }
}
