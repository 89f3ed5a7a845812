package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;

/** The key pair that the log is signed with. */
final class Keys {
  static final String AREA = "key";

  private Keys() {}

  static List<Finding> look(LedgerFiles files) {
    List<Finding> found = new ArrayList<>();
    boolean secret = present(found, files.secret(), true);
    if (secret) {
      found.add(readers(files));
    }
    boolean both = present(found, files.verifier(), false) && secret;
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
              "Put back into "
                  + files.directory()
                  + " the two that belong together: ledger.pub as any backup holds it, ledger.key as"
                  + " one does that was made with --with-key."));
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
    String owner = Directory.owner(file.getParent());
    String copy =
        "cp BACKUP/" + file.getFileName() + " " + file + " && chown " + owner + ": " + file;
    return secret
        ? "Copy it back from where it is kept, or from a backup that was made with --with-key: "
            + copy
            + " && chmod 600 "
            + file
            + ". Without it this log is at its end, though all in it can still be verified."
        : "Copy it back from a backup: "
            + copy
            + ". Or write into it the line that ledger create printed and that you keep elsewhere.";
  }

  /** The key is what nobody else must have: who has it can sign another history. */
  private static Finding readers(LedgerFiles files) {
    return files
        .exposedKey()
        .map(e -> Finding.told(AREA, Mark.BAD, e))
        .orElseGet(() -> Finding.good(AREA, "Only its owner may read ledger.key."));
  }
}
