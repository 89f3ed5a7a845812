package witnessmark.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import witnessmark.torque.Visible;

/** A table for a terminal: columns as wide as their widest cell, the last one unbounded. */
public final class Table {
  private final List<List<String>> rows = new ArrayList<>();

  public Table(String... heads) {
    rows.add(List.of(heads));
  }

  public void add(String... cells) {
    // a cell of any origin stays within its line
    rows.add(Arrays.stream(cells).map(Visible::of).toList());
  }

  /** Whether there is a row beside the heads. */
  public boolean isEmpty() {
    return rows.size() == 1;
  }

  @Override
  public String toString() {
    int columns = rows.get(0).size();
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int i = 0; i < columns; i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < columns; i++) {
        String cell = row.get(i);
        line.append(cell);
        if (i < columns - 1) {
          line.append(" ".repeat(widths[i] - cell.length() + 2));
        }
      }
      text.append(line.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }
}
