package witnessmark.ledger;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;

/** Why a file cannot be used, in words: the platform's exceptions say it by their class alone. */
public final class FileFault {
  /** As the C library's strerror(3) says ENOSPC. */
  private static final String NO_ROOM = "No space left on device";

  private FileFault() {}

  /** Half a sentence such as {@code there is no such file}. */
  public static String why(IOException e) {
    if (e instanceof NoSuchFileException missing) {
      return missing(missing);
    } else if (e instanceof CharacterCodingException) {
      return "it is not UTF-8";
    } else if (e instanceof AccessDeniedException) {
      return "this user has no right to it";
    } else if (e instanceof FileAlreadyExistsException) {
      return "a file of that name is in the way";
    }
    String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    if (NO_ROOM.equals(reason)) {
      return "there is no room left on the disk";
    }
    if ("Is a directory".equals(reason)) {
      return "it is a directory";
    }
    return reason == null || reason.isEmpty()
        ? "the system gives no reason"
        : reason.substring(0, 1).toLowerCase(Locale.ROOT) + reason.substring(1);
  }

  /**
   * The same with the file in front where it is another one, e.g. {@code key.lock: there is no such
   * file}.
   *
   * @param told the file or directory that the sentence names already
   */
  public static String beside(Path told, IOException e) {
    boolean other =
        e instanceof FileSystemException f
            && f.getFile() != null
            && !Path.of(f.getFile()).toAbsolutePath().equals(told.toAbsolutePath());
    return other ? ((FileSystemException) e).getFile() + ": " + why(e) : why(e);
  }

  /** Whoever mistyped the directory looks for the file in vain. */
  private static String missing(NoSuchFileException e) {
    Path directory = e.getFile() == null ? null : Path.of(e.getFile()).getParent();
    return directory == null || Files.isDirectory(directory)
        ? "there is no such file"
        : "there is no directory " + directory;
  }
}
