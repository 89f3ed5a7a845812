package witnessmark.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A database seen through the {@code sqlite3} shell, as anybody can who reaches the file.
 *
 * @param file the database
 * @param prefix the words of a command that runs the shell, such as {@code nsenter}
 */
public record Sqlite(Path file, List<String> prefix) {
  public Sqlite(Path file) {
    this(file, List.of());
  }

  /** Runs statements; the lines that come out, columns between vertical bars. */
  public List<String> run(String... statements) {
    try {
      List<String> line = new ArrayList<>(prefix);
      line.addAll(List.of("sqlite3", "-bail", file.toString()));
      Process shell = new ProcessBuilder(line).redirectErrorStream(true).start();
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

  /** Runs statements that the file's triggers would stop, and leaves the triggers as they were. */
  public List<String> unguarded(String... statements) {
    String triggers = "FROM sqlite_schema WHERE type = 'trigger';";
    List<String> all = new ArrayList<>();
    run("SELECT 'DROP TRIGGER ' || name || ';' " + triggers).forEach(all::add);
    all.addAll(List.of(statements));
    all.addAll(run("SELECT sql || ';' " + triggers));
    return run(all.toArray(String[]::new));
  }

  /** The one number that a query gives. */
  public long number(String query) {
    return Long.parseLong(run(query).get(0));
  }
}
