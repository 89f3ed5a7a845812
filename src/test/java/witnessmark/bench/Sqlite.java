package witnessmark.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;

/**
 * A database seen through the {@code sqlite3} shell, as anybody can who reaches the file.
 *
 * @param file the database
 */
public record Sqlite(Path file) {
  /** Runs statements; the lines that come out, columns between vertical bars. */
  public List<String> run(String... statements) {
    try {
      Process shell =
          new ProcessBuilder("sqlite3", "-bail", file.toString()).redirectErrorStream(true).start();
      try (var in = shell.getOutputStream()) {
        in.write((".timeout 20000\n" + String.join("\n", statements) + "\n").getBytes(UTF_8));
      }
      String out = new String(shell.getInputStream().readAllBytes(), UTF_8);
      if (Exit.await(shell) != 0) {
        throw new AssertionError("sqlite3 says " + out);
      }
      return out.lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The one number that a query gives. */
  public long number(String query) {
    return Long.parseLong(run(query).get(0));
  }
}
