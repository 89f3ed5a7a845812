package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;

/** The key pair that the log is signed with. */
final class Keys {
  private static final String AREA = "key";

  private Keys() {}

  static List<Finding> look(LedgerFiles files) {
    List<Finding> found = new ArrayList<>();
    boolean both = present(found, files.secret(), true) & present(found, files.verifier(), false);
    if (!both) {
      return found;
    }
    try {
      String name = files.keys().get(0).name();
      found.add(Finding.good(AREA, "ledger.key and ledger.pub belong together: " + name + "."));
    } catch (LedgerException e) {
      found.add(
          Finding.bad(
              AREA,
              "ledger.key and ledger.pub do not make a pair: " + cause(e) + ".",
              "Restore both from the same backup into " + files.directory() + "."));
    }
    return found;
  }

  /** Whether the log can be signed. */
  static boolean pair(LedgerFiles files) {
    try {
      files.keys();
      return true;
    } catch (LedgerException e) {
      return false;
    }
  }

  private static String cause(LedgerException e) {
    return e.getCause() == null ? e.getMessage() : e.getCause().getMessage();
  }

  private static boolean present(List<Finding> found, Path file, boolean secret) {
    try {
      Files.readAllBytes(file);
      if (secret) {
        readers(found, file);
      }
      return true;
    } catch (NoSuchFileException e) {
      found.add(Finding.bad(AREA, file + " is missing; " + effect(secret), restore(file, secret)));
    } catch (IOException e) {
      found.add(
          Finding.bad(
              AREA,
              file + " cannot be read: " + Directory.why(e) + "; " + effect(secret),
              "Look as the user who owns it: ls -l " + file));
    }
    return false;
  }

  private static String effect(boolean secret) {
    return secret ? "nothing can be recorded." : "nothing can be recorded or verified here.";
  }

  private static String restore(Path file, boolean secret) {
    String backup = "Copy it back from a backup: cp BACKUP/" + file.getFileName() + " " + file;
    return secret
        ? backup + ". Without it this log is at its end, though all in it can still be verified."
        : backup
            + ". Or write into it the line that ledger create printed and that you keep elsewhere.";
  }

  /** The key is what nobody else must have: who has it can sign another history. */
  private static void readers(List<Finding> found, Path file) throws IOException {
    Set<PosixFilePermission> may;
    try {
      may = Files.getPosixFilePermissions(file);
    } catch (UnsupportedOperationException e) {
      return;
    }
    boolean others =
        may.stream().anyMatch(p -> p.name().startsWith("GROUP_") || p.name().startsWith("OTHERS_"));
    String rights = PosixFilePermissions.toString(may);
    found.add(
        others
            ? Finding.bad(
                AREA,
                "Others than its owner may read or write " + file + " (" + rights + ").",
                "Keep it to its owner: chmod 600 " + file)
            : Finding.good(AREA, "Only its owner may read ledger.key (" + rights + ")."));
  }
}
