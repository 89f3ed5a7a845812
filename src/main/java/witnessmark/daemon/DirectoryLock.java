package witnessmark.daemon;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Modes;

/** Keeps a second daemon off a data directory; goes with the process, however it ends. */
final class DirectoryLock implements AutoCloseable {
  private final FileChannel channel;

  private DirectoryLock(FileChannel channel) {
    this.channel = channel;
  }

  static DirectoryLock take(LedgerFiles files) {
    files.mustExist();
    try {
      FileChannel channel =
          FileChannel.open(
              files.directory().resolve("daemon.lock"),
              Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
              Modes.of("rw-------"));
      FileLock held = channel.tryLock();
      if (held == null) {
        channel.close();
        throw taken(files);
      }
      return new DirectoryLock(channel);
    } catch (OverlappingFileLockException e) {
      throw taken(files);
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

  private static LedgerException taken(LedgerFiles files) {
    return new LedgerException(
        "Another daemon works on "
            + files.directory()
            + ". Stop that one first, or give this one its own directory with --data.");
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
