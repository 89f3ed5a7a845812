package witnessmark.docs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The texts in a package's source that make up what is said to people at certain places. */
final class Literals {
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

  private Literals() {}

  /**
   * Each text that stands in a statement after the place, with the file that it is in; where the
   * statement has none, because a method makes the sentence, every text of the file.
   */
  static Map<String, String> afterOrBeside(Path directory, Pattern place) {
    return after(directory, place, Literals::texts);
  }

  /** Each text that stands in a statement after the place, with the file that it is in. */
  static Map<String, String> after(Path directory, Pattern place) {
    return after(directory, place, source -> List.of());
  }

  private static Map<String, String> after(
      Path directory, Pattern place, Function<String, List<String>> elsewhere) {
    Map<String, String> found = new LinkedHashMap<>();
    try (Stream<Path> files = Files.list(directory)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String source = Files.readString(file);
        Matcher m = place.matcher(source);
        while (m.find()) {
          List<String> said = texts(statement(source, m.end()));
          (said.isEmpty() ? elsewhere.apply(source) : said)
              .forEach(text -> found.put(text, file.getFileName().toString()));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return found;
  }

  private static List<String> texts(String code) {
    return LITERAL
        .matcher(code)
        .results()
        .map(r -> r.group(1).translateEscapes().strip())
        .filter(text -> text.length() > 1)
        .toList();
  }

  /** The source from there to the statement's semicolon, or the end of what it stands in. */
  private static String statement(String source, int from) {
    int depth = 0;
    boolean quoted = false;
    for (int i = from; i < source.length(); i++) {
      char c = source.charAt(i);
      if (c == '\\' && quoted) {
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (!quoted && (c == '(' || c == ')')) {
        depth += c == '(' ? 1 : -1;
      }
      if (!quoted && (depth < 0 || c == ';')) {
        return source.substring(from, i);
      }
    }
    return source.substring(from);
  }
}
