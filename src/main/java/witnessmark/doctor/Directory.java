package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerFiles;

/** The data directory: whose it is, who may change it, and who works on it. */
final class Directory {
  private static final String AREA = "data directory";

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
    if (!files.exist()) {
      found.add(
          Finding.bad(
              AREA,
              directory.toAbsolutePath() + " holds no log.",
              "Begin one: witnessmark ledger create --data "
                  + directory
                  + ". If there was one, restore its ledger.db, ledger.key and ledger.pub from a"
                  + " backup instead."));
      return found;
    }
    try {
      owners(directory);
      changeable(directory);
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
    try (Stream<Path> all = Files.list(directory)) {
      for (Path file : all.sorted().toList()) {
        boolean ours = file.getFileName().toString().matches("ledger\\..*|daemon\\.lock");
        if (ours && !Files.getOwner(file).getName().equals(owner)) {
          others.add(file.getFileName() + " (" + Files.getOwner(file).getName() + ")");
        }
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

  private void changeable(Path directory) throws IOException {
    for (Path path : List.of(directory, files.database())) {
      Set<PosixFilePermission> may = Files.getPosixFilePermissions(path);
      if (may.contains(PosixFilePermission.OTHERS_WRITE)) {
        found.add(
            Finding.bad(
                AREA,
                "Everybody may write to " + path + " (" + PosixFilePermissions.toString(may) + ").",
                "Take that away: chmod o-w " + path));
      }
    }
  }

  /** Why a file cannot be used, for the checks beside this one. */
  static String why(IOException e) {
    return FileFault.why(e);
  }
}
