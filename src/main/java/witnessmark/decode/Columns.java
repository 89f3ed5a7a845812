package witnessmark.decode;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Fields in a fixed order between delimiters.
 *
 * @param delimiter the text between two columns, not empty
 * @param columns every column, in order
 */
public record Columns(String delimiter, List<Column> columns) implements MessageForm {
  public Columns {
    if (delimiter.isEmpty() || columns.isEmpty()) {
      throw new IllegalArgumentException("columns need a delimiter and at least one column");
    }
    columns = List.copyOf(columns);
  }

  @Override
  public Set<EventField> gives() {
    Set<EventField> fields = EnumSet.noneOf(EventField.class);
    columns.forEach(c -> c.field().ifPresent(fields::add));
    return fields;
  }

  Map<EventField, String> pick(String frame) throws Refusal {
    Map<EventField, String> texts = new EnumMap<>(EventField.class);
    int from = 0;
    for (int i = 0; i < columns.size(); i++) {
      int to = frame.indexOf(delimiter, from);
      boolean last = i == columns.size() - 1;
      if (last != (to < 0)) {
        throw new Refusal(
            "the frame has "
                + (last ? "more than " + columns.size() : i + 1)
                + " columns; "
                + columns.size()
                + " are allowed");
      }
      take(i, frame.substring(from, last ? frame.length() : to), texts);
      from = to + delimiter.length();
    }
    return texts;
  }

  private void take(int index, String text, Map<EventField, String> texts) throws Refusal {
    Column column = columns.get(index);
    if (column.literal().isPresent() && !column.literal().get().equals(text)) {
      throw new Refusal(
          "column "
              + (index + 1)
              + " is "
              + Reason.shown(text)
              + "; "
              + Reason.shown(column.literal().get())
              + " is allowed");
    }
    column.field().ifPresent(f -> texts.put(f, text));
  }
}
