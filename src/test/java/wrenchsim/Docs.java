package wrenchsim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The literal examples of the published wire documents. */
public final class Docs {
  private Docs() {}

  /** The one line of a document that begins so, apart from its indent. */
  public static String line(String document, String beginning) throws IOException {
    return Files.readAllLines(Path.of("docs", document)).stream()
        .map(String::strip)
        .filter(l -> l.startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  /** The JSON block of a document that begins so. */
  public static String json(String document, String beginning) throws IOException {
    String text = Files.readString(Path.of("docs", document));
    int from = text.indexOf(beginning);
    return text.substring(from, text.indexOf("\n```", from));
  }
}
