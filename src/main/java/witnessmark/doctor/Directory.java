package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerFiles;

/** The data directory: whose it is, who may change it, and who works on it. */
final class Directory {
  static final String AREA = "data directory";
  private static final Pattern OURS = Pattern.compile("ledger\\..*|(daemon|key)\\.lock");

  private final LedgerFiles files;
  private final List<Finding> found = new ArrayList<>();

  private Directory(LedgerFiles files) {
    this.files = files;
  }

  static List<Finding> look(LedgerFiles files, OptionalLong daemon) {
    return new Directory(files).findings(daemon);
  }

  private List<Finding> findings(OptionalLong daemon) {
    Path directory = files.directory();
    if (!Files.isDirectory(directory)) {
      found.add(
          Finding.bad(
              AREA,
              directory.toAbsolutePath()
                  + (Files.exists(directory) ? " is a file." : " does not exist."),
              "Name the right one with --data, or begin a log there: witnessmark ledger create --data "
                  + directory));
      return found;
    }
    if (!Files.isReadable(directory) || !Files.isExecutable(directory)) {
      found.add(
          Finding.bad(
              AREA,
              "This user may not look into " + directory.toAbsolutePath() + ".",
              "Look as its owner: sudo -u "
                  + owner(directory)
                  + " witnessmark doctor --data "
                  + directory));
      return found;
    }
    if (!files.exist()) {
      found.add(noLog(directory));
      return found;
    }
    files.exposedFiles().forEach(e -> found.add(Finding.told(AREA, Mark.BAD, e)));
    try {
      owners(directory);
    } catch (IOException | UnsupportedOperationException e) {
      found.add(
          Finding.warn(
              AREA,
              "Whose the files in " + directory + " are cannot be told.",
              "Look yourself: ls -la " + directory));
    }
    found.add(
        daemon.isPresent()
            ? Finding.good(AREA, "A daemon works on it: process " + daemon.getAsLong() + ".")
            : Finding.good(AREA, "No daemon works on it now."));
    return found;
  }

  /** A command that somebody ran as another user leaves files that the daemon cannot write. */
  private void owners(Path directory) throws IOException {
    String owner = Files.getOwner(directory).getName();
    List<String> others = new ArrayList<>();
    for (Path file : ours(directory)) {
      if (!Files.getOwner(file).getName().equals(owner)) {
        others.add(file.getFileName() + " (" + Files.getOwner(file).getName() + ")");
      }
    }
    if (others.isEmpty()) {
      found.add(Finding.good(AREA, directory.toAbsolutePath() + " belongs to " + owner + "."));
    } else {
      found.add(
          Finding.bad(
              AREA,
              directory
                  + " belongs to "
                  + owner
                  + ", but not all in it: "
                  + String.join(", ", others)
                  + ".",
              "Give it back: chown -R " + owner + ": " + directory));
    }
    String user = System.getProperty("user.name");
    if (!user.equals(owner) && !user.equals("root")) {
      found.add(
          Finding.warn(
              AREA,
              "You are " + user + ", so not all can be looked at.",
              "Look as its owner: sudo -u " + owner + " witnessmark doctor --data " + directory));
    }
  }

  /** Whoever begins a second log beside parts of a first one loses sight of the first. */
  private static Finding noLog(Path directory) {
    List<String> parts;
    try {
      parts = ours(directory).stream().map(f -> f.getFileName().toString()).toList();
    } catch (IOException e) {
      parts = List.of();
    }
    String restore = "witnessmark ledger restore BACKUP --data " + directory;
    return parts.isEmpty()
        ? Finding.bad(
            AREA,
            directory.toAbsolutePath() + " holds no log.",
            "Begin one: witnessmark ledger create --data "
                + directory
                + ". If there was one, see whether its disk is mounted, or restore it: "
                + restore)
        : Finding.bad(
            AREA,
            directory.toAbsolutePath()
                + " holds parts of a log ("
                + String.join(", ", parts)
                + "), but not its ledger.db.",
            "Begin none. Find out where ledger.db went and put it back beside them. If it is lost,"
                + " move ledger.db-wal and ledger.db-shm aside where they are there, keep them, and"
                + " restore a backup: "
                + restore);
  }

  private static List<Path> ours(Path directory) throws IOException {
    try (Stream<Path> all = Files.list(directory)) {
      return all.filter(f -> OURS.matcher(f.getFileName().toString()).matches()).sorted().toList();
    }
  }

  /** Who owns it; a placeholder where that cannot be told. */
  static String owner(Path path) {
    try {
      return Files.getOwner(path.toAbsolutePath()).getName();
    } catch (IOException | UnsupportedOperationException e) {
      return "OWNER";
    }
  }

  /** Why a file cannot be used, for the checks beside this one. */
  static String why(IOException e) {
    return FileFault.why(e);
  }
}
