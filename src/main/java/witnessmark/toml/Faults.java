package witnessmark.toml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tomlj.TomlPosition;

/** Collects the faults of one file. */
final class Faults {
  private final String file;
  private final List<Fault> found = new ArrayList<>();

  Faults(String file) {
    this.file = file;
  }

  void add(TomlPosition position, String what, String allowed) {
    int line = position == null ? 1 : position.line();
    int column = position == null ? 1 : position.column();
    found.add(new Fault(file, line, column, what, allowed));
  }

  List<Fault> sorted() {
    return found.stream()
        .sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
        .toList();
  }
}
