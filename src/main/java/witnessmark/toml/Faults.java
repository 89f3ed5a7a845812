package witnessmark.toml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tomlj.TomlPosition;

/** Collects the faults of one file. */
final class Faults {
  private static final int LONGEST = 1_000;
  private final String file;
  private final String[] lines;
  private final List<Fault> found = new ArrayList<>();

  Faults(String file, String text) {
    this.file = file;
    this.lines = text.split("\n", -1);
  }

  void add(TomlPosition position, String what, String allowed) {
    int line = position == null ? 1 : position.line();
    int column = position == null ? 1 : position.column();
    found.add(new Fault(file, line, column, shown(what), shown(allowed)));
  }

  /**
   * Where a part of a value stands.
   *
   * @param key the position of its key
   * @param value as it was read
   * @param offset of the part in it
   * @return the key's own position where the value is not written on its line just as it was read
   */
  TomlPosition within(TomlPosition key, String value, int offset) {
    String line = key.line() <= lines.length ? lines[key.line() - 1] : "";
    int at = line.indexOf(value, Math.min(key.column() - 1, line.length()));
    return at < 0
        ? key
        : TomlPosition.positionAt(key.line(), line.codePointCount(0, at + offset) + 1);
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
