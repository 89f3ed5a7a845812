package witnessmark.report;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;

/**
 * By what, when and from which state of which log a page was made.
 *
 * @param program as {@code Witnessmark 0.1.0}
 * @param made when
 * @param log its name
 * @param size how many entries it had
 * @param root of its signed tree, in base64
 */
public record Provenance(String program, Instant made, String log, long size, String root) {
  public Provenance {
    Objects.requireNonNull(program, "program");
    Objects.requireNonNull(made, "made");
  }

  /**
   * @param checkpoint a signed note, whose first lines are the log's name, size and root
   */
  public static Provenance of(String program, Instant made, String checkpoint) {
    List<String> lines = checkpoint.lines().limit(3).toList();
    return new Provenance(program, made, lines.get(0), Long.parseLong(lines.get(1)), lines.get(2));
  }

  /** The day of making, UTC: to the day, so that the same pages come out on it. */
  public String day() {
    return made.atZone(ZoneOffset.UTC).toLocalDate().toString();
  }

  /** In a line. */
  public String text() {
    return program + " · made " + day() + " · " + log + " · " + size + " · " + root;
  }
}
