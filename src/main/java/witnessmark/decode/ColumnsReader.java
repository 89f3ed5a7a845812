package witnessmark.decode;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;

/** Reads the columns of a {@code [message]} with {@code form = "columns"}. */
final class ColumnsReader {
  private static final String LIST =
      "write a list of field names, \"-\" for a column to skip, and texts in single quotes";

  private ColumnsReader() {}

  static Optional<MessageForm> read(Section message) {
    Optional<String> delimiter =
        message.requiredRead(
            "delimiter", "write the text between two columns", ColumnsReader::delimiter);
    if (!message.has("columns")) {
      message.fault("columns", "message has no \"columns\"", LIST);
    }
    Optional<List<String>> names = message.texts("columns");
    if (names.isPresent() && names.get().isEmpty()) {
      message.fault("columns", "there are no columns", LIST);
      return Optional.empty();
    }
    Optional<List<Column>> columns = names.map(n -> columns(message, n));
    return columns.map(c -> new Columns(delimiter.orElse("|"), c));
  }

  private static String delimiter(String text) {
    if (text.isEmpty()) {
      throw new IllegalArgumentException("the delimiter is empty");
    }
    return text;
  }

  private static List<Column> columns(Section message, List<String> names) {
    List<Column> columns = new ArrayList<>();
    Set<EventField> seen = EnumSet.noneOf(EventField.class);
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      Optional<Column> column = Column.of(name);
      if (column.isEmpty()) {
        message.fault(
            "columns",
            i,
            "column " + (i + 1) + ", \"" + name + "\", is no field",
            Nearest.hint(name, EventField.codes()));
      }
      if (column.flatMap(Column::field).filter(f -> !seen.add(f)).isPresent()) {
        message.fault(
            "columns", i, "\"" + name + "\" is a column twice", "write \"-\" for one to skip");
      }
      columns.add(column.orElse(new Column(Optional.empty(), Optional.empty())));
    }
    return columns;
  }
}
