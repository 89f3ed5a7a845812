package witnessmark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.ledger.verify.Kept;

/**
 * Checkpoints that somebody kept: a file, or a directory of them.
 *
 * @param notes by the name of the file
 * @param least the fewest entries that one of them signs
 * @param most the most
 */
record KeptFiles(List<Kept> notes, long least, long most) {
  private static final String ONE = "the checkpoint that was kept";

  /** None. */
  static final KeptFiles NONE = new KeptFiles(List.of(), 0, 0);

  KeptFiles {
    notes = List.copyOf(notes);
  }

  /**
   * Reads them. In a directory every file counts but those whose name begins with a dot.
   *
   * @param from where they are; null for nowhere
   * @param verifier a key of the log
   */
  static KeptFiles read(Path from, String verifier) {
    if (from == null) {
      return NONE;
    }
    boolean many = java.nio.file.Files.isDirectory(from);
    List<Kept> notes = new ArrayList<>();
    long least = Long.MAX_VALUE;
    long most = 0;
    for (Path file : many ? files(from) : List.of(from)) {
      String note = KeyFile.note(file);
      long size = KeyFile.kept(file, note, verifier).size();
      least = Math.min(least, size);
      most = Math.max(most, size);
      notes.add(new Kept(many ? ONE + " in " + file : ONE, note));
    }
    return new KeptFiles(notes, least, most);
  }

  private static List<Path> files(Path directory) {
    List<Path> found;
    try (Stream<Path> all = java.nio.file.Files.list(directory)) {
      found =
          all.filter(java.nio.file.Files::isRegularFile)
              .filter(f -> !f.getFileName().toString().startsWith("."))
              .sorted()
              .toList();
    } catch (IOException e) {
      throw Files.unreadable(directory, e);
    }
    if (found.isEmpty()) {
      throw new Refusal(
          Exit.INPUT,
          directory + " holds no file, so there is no checkpoint to compare with; name another.");
    }
    return found;
  }

  /** That the log goes on from all of them, in words; for one or more. */
  String agree() {
    return notes.size() == 1
        ? "The first " + most + " are those that the kept checkpoint signs."
        : "They go on from all "
            + notes.size()
            + " kept checkpoints, which sign "
            + least
            + " to "
            + most
            + " entries.";
  }
}
