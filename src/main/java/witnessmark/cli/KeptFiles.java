package witnessmark.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import witnessmark.ledger.verify.Kept;

/**
 * Checkpoints that somebody kept: a file, or a directory of them.
 *
 * @param notes by the name of the file
 * @param least the fewest entries that one of them signs
 * @param most the most
 * @param others the names of files beside them that are no checkpoints
 */
record KeptFiles(List<Kept> notes, long least, long most, List<String> others) {
  private static final String ONE = "the checkpoint that was kept";
  private static final int LISTED = 5;

  /** As they are dropped ({@code checkpoint-000000000012.txt}), and as people name them by date. */
  private static final Pattern NAME = Pattern.compile("checkpoint-[0-9][0-9-]*\\.txt");

  /** None. */
  static final KeptFiles NONE = new KeptFiles(List.of(), 0, 0, List.of());

  KeptFiles {
    notes = List.copyOf(notes);
    others = List.copyOf(others);
  }

  /**
   * Reads them. In a directory every file counts that has the name or the look of a checkpoint, but
   * those whose name begins with a dot.
   *
   * @param from where they are; null for nowhere
   * @param verifier a key of the log
   */
  static KeptFiles read(Path from, String verifier) {
    if (from == null) {
      return NONE;
    }
    if (!java.nio.file.Files.isDirectory(from)) {
      String note = KeyFile.note(from);
      long size = KeyFile.kept(from, note, verifier).size();
      return new KeptFiles(List.of(new Kept(ONE, note)), size, size, List.of());
    }
    List<Kept> notes = new ArrayList<>();
    List<String> others = new ArrayList<>();
    long least = Long.MAX_VALUE;
    long most = 0;
    for (Path file : files(from)) {
      if (!counts(file)) {
        others.add(file.getFileName().toString());
        continue;
      }
      String note = KeyFile.note(file);
      long size =
          KeyFile.kept(file, note, verifier, "Move it out of " + from + ", and keep it.").size();
      least = Math.min(least, size);
      most = Math.max(most, size);
      notes.add(new Kept(ONE + " in " + file, note));
    }
    if (notes.isEmpty()) {
      throw new Refusal(
          Exit.INPUT,
          from + " holds no checkpoint to compare with; name another directory, or a file.");
    }
    return new KeptFiles(notes, least, most, others);
  }

  /** One with the name of a checkpoint must be one; any other counts when it looks like one. */
  private static boolean counts(Path file) {
    if (NAME.matcher(file.getFileName().toString()).matches()) {
      return true;
    }
    byte[] head = Files.bytes(file, KeyFile.LONGEST);
    return KeyFile.looksLikeOne(new String(head, StandardCharsets.UTF_8).replace("\r\n", "\n"));
  }

  private static List<Path> files(Path directory) {
    try (Stream<Path> all = java.nio.file.Files.list(directory)) {
      return all.filter(java.nio.file.Files::isRegularFile)
          .filter(f -> !f.getFileName().toString().startsWith("."))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw Files.unreadable(directory, e);
    }
  }

  /** Which files were not compared; empty where all were. */
  Optional<String> leftOut() {
    if (others.isEmpty()) {
      return Optional.empty();
    }
    int more = others.size() - LISTED;
    return Optional.of(
        "Left out, being no checkpoints: "
            + String.join(", ", others.subList(0, Math.min(LISTED, others.size())))
            + (more > 0 ? " and " + more + " more." : "."));
  }

  /** That the log goes on from all of them, in words; for one or more. */
  String agree() {
    return notes.size() == 1
        ? (most == 1 ? "The first is the one" : "The first " + most + " are those")
            + " that the kept checkpoint signs."
        : "They go on from all "
            + notes.size()
            + " kept checkpoints, which sign "
            + least
            + " to "
            + most
            + " entries.";
  }
}
