package witnessmark.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** What owner, group and others may do with a file. */
public final class Modes {
  private Modes() {}

  /** The mode of a file to be made, e.g. {@code rw-r-----}; a umask may take away from it. */
  public static FileAttribute<Set<PosixFilePermission>> of(String mode) {
    return PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(mode));
  }

  /** What is wrong with the mode of a secret that its owner's group may read, and the way out. */
  public static Optional<String> open(Path secret) {
    String found = excess(secret, "rw-r-----");
    return found.isEmpty()
        ? Optional.empty()
        : Optional.of(
            secret + " is open to others (" + found + "). Run: chmod g-wx,o-rwx " + secret);
  }

  /** The file's mode where it allows more than that; else, and where there is none, nothing. */
  static String excess(Path file, String most) {
    try {
      Set<PosixFilePermission> found = Files.getPosixFilePermissions(file);
      Set<PosixFilePermission> more = EnumSet.noneOf(PosixFilePermission.class);
      more.addAll(found);
      more.removeAll(PosixFilePermissions.fromString(most));
      return more.isEmpty() ? "" : PosixFilePermissions.toString(found);
    } catch (IOException | UnsupportedOperationException e) {
      return "";
    }
  }
}
