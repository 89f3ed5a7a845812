package witnessmark.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;

/**
 * Keeps a second daemon off a data directory, and a daemon and a restore off each other; goes with
 * the process, however it ends.
 */
public final class DirectoryLock implements AutoCloseable {
  private final Path file;
  private final FileChannel channel;
  private final boolean made;

  private DirectoryLock(Path file, FileChannel channel, boolean made) {
    this.file = file;
    this.channel = channel;
    this.made = made;
  }

  /**
   * For a daemon.
   *
   * @throws LedgerException when there is no log, or another process works on it
   */
  public static DirectoryLock take(LedgerFiles files) {
    files.mustExist();
    return take(
        files,
        "Another daemon works on "
            + files.directory()
            + ". Stop that one first, or give this one its own directory with --data.");
  }

  /**
   * For whoever puts a log where there is none.
   *
   * @throws LedgerException when another process works there
   */
  public static DirectoryLock ofEmpty(LedgerFiles files) {
    return take(
        files,
        "A process works on "
            + files.directory()
            + ", though there is no ledger.db: a daemon whose log was removed, or another restore."
            + " Which one: fuser -v "
            + files.directory().resolve("daemon.lock")
            + " (package psmisc). Stop it first.");
  }

  private static DirectoryLock take(LedgerFiles files, String taken) {
    Path file = files.directory().resolve("daemon.lock");
    boolean made = Files.notExists(file);
    try {
      FileChannel channel =
          FileChannel.open(
              file,
              Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
              Modes.of("rw-------"));
      if (channel.tryLock() == null) {
        channel.close();
        throw new LedgerException(taken);
      }
      if (made) {
        Ownership.give(file, files.directory());
      }
      return new DirectoryLock(file, channel, made);
    } catch (OverlappingFileLockException e) {
      throw new LedgerException(taken, e);
    } catch (IOException e) {
      throw new LedgerException(
          "The directory "
              + files.directory()
              + " cannot be locked: "
              + FileFault.why(e)
              + ". Run as the user who owns it, or make it writable.",
          e);
    }
  }

  /** Removes the lock's file where this made it, so that a directory is left as it was found. */
  public void leaveNothing() throws IOException {
    if (made) {
      Files.deleteIfExists(file);
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new LedgerException("The lock cannot be given back: " + FileFault.why(e), e);
    }
  }
}
