package witnessmark.ledger;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;

/**
 * To whom new files belong: run by root, a command must not leave files behind that the daemon's
 * user cannot open.
 */
public final class Ownership {
  private Ownership() {}

  /**
   * Gives a file to the user and the group that another file or directory belongs to.
   *
   * @throws IOException when the user is another one, and this one may not give files away
   */
  public static void give(Path file, Path as) throws IOException {
    PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
    if (view == null) {
      return; // a system without owners of this kind
    }
    PosixFileAttributes wanted = Files.readAttributes(as, PosixFileAttributes.class);
    PosixFileAttributes found = view.readAttributes();
    if (!found.owner().equals(wanted.owner())) {
      view.setOwner(wanted.owner());
    }
    if (!found.group().equals(wanted.group())) {
      try {
        view.setGroup(wanted.group());
      } catch (FileSystemException e) {
        return; // its owner, who needs it, is the right one; he need not be in that group
      }
    }
  }
}
