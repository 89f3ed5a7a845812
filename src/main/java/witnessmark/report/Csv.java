package witnessmark.report;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Rows of comma-separated values after RFC 4180.
 *
 * <p>A cell that a spreadsheet would take for a formula (beginning with {@code = + - @}, tab or
 * carriage return, and no plain number) is led by an apostrophe.
 */
public final class Csv {
  private Csv() {}

  /** The row with its CR LF. */
  public static String row(List<String> cells) {
    return cells.stream().map(Csv::cell).collect(Collectors.joining(",", "", "\r\n"));
  }

  private static String cell(String text) {
    String safe = formula(text) ? "'" + text : text;
    boolean quoted =
        safe.contains(",") || safe.contains("\"") || safe.contains("\n") || safe.contains("\r");
    return quoted ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
  }

  private static boolean formula(String text) {
    return !text.isEmpty()
        && "=+-@\t\r".indexOf(text.charAt(0)) >= 0
        && !text.matches("-?[0-9]+(\\.[0-9]+)?");
  }
}
