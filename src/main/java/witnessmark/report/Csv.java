package witnessmark.report;

import java.util.List;
import witnessmark.torque.Visible;

/**
 * Rows of comma-separated values after RFC 4180.
 *
 * <p>A cell that a spreadsheet would take for a formula (beginning with {@code = + - @}, tab, or a
 * line end, and no plain number) is led by an apostrophe. What a terminal would obey is written
 * out, line ends too: the exact text is in the entry.
 */
public final class Csv {
  /** The last four are the full-width forms, which spreadsheets of East Asian locales take, too. */
  private static final String STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

  private Csv() {}

  /** The row with its CR LF. */
  public static String row(List<String> cells) {
    StringBuilder row = new StringBuilder(256);
    for (String cell : cells) {
      cell(row, cell);
      row.append(',');
    }
    row.setLength(row.length() - 1);
    return row.append("\r\n").toString();
  }

  private static void cell(StringBuilder row, String text) {
    String safe = (formula(text) ? "'" : "") + Visible.of(text);
    if (quoted(safe)) {
      row.append('"').append(safe.replace("\"", "\"\"")).append('"');
    } else {
      row.append(safe);
    }
  }

  private static boolean quoted(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ',' || c == '"') {
        return true;
      }
    }
    return false;
  }

  private static boolean formula(String text) {
    return !text.isEmpty()
        && STARTS.indexOf(text.charAt(0)) >= 0
        && !text.matches("-?[0-9]+(\\.[0-9]+)?");
  }
}
