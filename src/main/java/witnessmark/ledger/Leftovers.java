package witnessmark.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What lies of a log in a data directory whose {@code ledger.db} is not there. */
final class Leftovers {
  private final Path directory;
  private final List<String> names;

  private Leftovers(Path directory, List<String> names) {
    this.directory = directory;
    this.names = names;
  }

  /** What is there; nothing where the directory is missing or cannot be looked into. */
  static Leftovers in(Path directory) {
    try (Stream<Path> all = Files.list(directory)) {
      return new Leftovers(
          directory,
          all.map(f -> f.getFileName().toString())
              .filter(n -> n.startsWith("ledger."))
              .sorted()
              .toList());
    } catch (IOException e) {
      return new Leftovers(directory, List.of());
    }
  }

  /** That there are some, and how to get the log back; empty where there are none. */
  Optional<String> sentence() {
    return of(names)
        .map(
            found ->
                "No log in "
                    + directory
                    + ": its ledger.db is gone, but "
                    + found
                    + " there. "
                    + back());
  }

  /** Why no new log is begun here; empty where nothing would be lost by it. */
  Optional<String> refusal() {
    // A beginning that was cut short has recorded nothing; see NewLog.
    List<String> others = names.stream().filter(n -> !n.startsWith(NewLog.WORK)).toList();
    String begun =
        others.size() == names.size()
            ? "If no log was ever here, remove them, and begin anew."
            : "Or, as "
                + NewLog.WORK
                + " shows that a log was only about to be begun here, remove"
                + " them, and begin anew.";
    return of(others)
        .map(
            found ->
                "No log is begun in "
                    + directory
                    + ": its ledger.db is gone, but "
                    + found
                    + " there, and would be lost. "
                    + back()
                    + " For another log, move the whole directory aside first, and keep it. "
                    + begun);
  }

  private String back() {
    return "Put ledger.db back, or a backup in its place: witnessmark ledger restore BACKUP --data "
        + directory
        + ".";
  }

  private static Optional<String> of(List<String> found) {
    int last = found.size() - 1;
    return switch (found.size()) {
      case 0 -> Optional.empty();
      case 1 -> Optional.of(found.get(0) + " is");
      default ->
          Optional.of(
              String.join(", ", found.subList(0, last)) + " and " + found.get(last) + " are");
    };
  }
}
