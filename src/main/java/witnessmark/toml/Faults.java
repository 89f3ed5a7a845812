package witnessmark.toml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tomlj.TomlPosition;

/** Collects the faults of one file. */
final class Faults {
  private static final int LONGEST = 1_000;
  private final String file;
  private final List<Fault> found = new ArrayList<>();

  Faults(String file) {
    this.file = file;
  }

  void add(TomlPosition position, String what, String allowed) {
    int line = position == null ? 1 : position.line();
    int column = position == null ? 1 : position.column();
    found.add(new Fault(file, line, column, shown(what), shown(allowed)));
  }

  /** A file's own words may hold anything; a fault stays one line of bounded length. */
  private static String shown(String words) {
    if (words.length() <= LONGEST && words.chars().allMatch(c -> c >= ' ' && c < 127)) {
      return words;
    }
    StringBuilder line = new StringBuilder();
    words
        .codePoints()
        .limit(LONGEST)
        .forEach(
            c -> {
              if (Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE) {
                line.append(String.format("\\u%04X", c));
              } else {
                line.appendCodePoint(c);
              }
            });
    return words.codePointCount(0, words.length()) > LONGEST ? line + "…" : line.toString();
  }

  List<Fault> sorted() {
    return found.stream()
        .sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
        .toList();
  }
}
