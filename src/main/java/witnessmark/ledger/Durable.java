package witnessmark.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/** Files and directories that are on disk when a method here returns. */
public final class Durable {
  private Durable() {}

  /** Makes a new file that its owner alone may read. */
  public static void createPrivate(Path file, String text) throws IOException {
    Files.createFile(
        file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    Files.writeString(file, text, StandardOpenOption.TRUNCATE_EXISTING);
    force(file);
  }

  /** Makes a new file. */
  public static void create(Path file, String text) throws IOException {
    Files.writeString(file, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    force(file);
  }

  /** Brings what a file holds, or which files a directory holds, to disk. */
  public static void force(Path path) throws IOException {
    StandardOpenOption how =
        Files.isDirectory(path) ? StandardOpenOption.READ : StandardOpenOption.WRITE;
    try (FileChannel channel = FileChannel.open(path, how)) {
      channel.force(true);
    }
  }
}
