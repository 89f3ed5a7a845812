package witnessmark.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;

/**
 * The change of a log's key files, one at a time in a data directory. What a crash at each step
 * means stands beside it; the log goes on by one of the two keys after each.
 */
public final class KeyChange implements AutoCloseable {
  private final LedgerFiles files;
  private final KeyPairs pairs;
  private final FileChannel lock;

  private KeyChange(LedgerFiles files, FileChannel lock) {
    this.files = files;
    this.pairs = new KeyPairs(files.directory());
    this.lock = lock;
  }

  /**
   * Begins a change. A crash after this leaves nothing behind: the lock goes with the process.
   *
   * @throws LedgerException when another change is under way or the directory is not writable
   */
  public static KeyChange begin(LedgerFiles files) {
    files.mustExist();
    try {
      FileChannel channel = tryLock(files);
      if (channel == null) {
        throw new LedgerException(
            "The key of the log in "
                + files.directory()
                + " is being changed by another process. Wait until it has ended.");
      }
      return new KeyChange(files, channel);
    } catch (IOException e) {
      throw failed(files, e);
    }
  }

  private static FileChannel tryLock(LedgerFiles files) throws IOException {
    Path file = files.directory().resolve("key.lock");
    FileChannel channel =
        FileChannel.open(
            file,
            Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
            Modes.of("rw-------"));
    try {
      Ownership.give(file, files.directory());
      FileLock held = channel.tryLock();
      if (held != null) {
        return channel;
      }
    } catch (OverlappingFileLockException e) {
      // Held by this very process.
      channel.close();
      return null;
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    channel.close();
    return null;
  }

  /**
   * Makes the next key and puts it on disk beside the present one. A crash after this leaves a pair
   * of files that opens no checkpoint, so the old key goes on; the next change replaces them.
   *
   * @param present the key that signs now
   */
  public LogKey next(LogKey present) {
    LogKey next = LogKey.generate(present.name());
    try {
      // An earlier change that was cut short: its next key may be the only copy of the present one.
      pairs.install(present);
      pairs.stage(next);
    } catch (IOException e) {
      throw failed(files, e);
    }
    return next;
  }

  /**
   * Copies the present private key to a new file that its owner alone may read. A crash after this
   * leaves one copy of the key that still signs.
   */
  public void keepOld(Path copy) {
    try {
      Durable.createPrivate(copy, Files.readString(files.directory().resolve("ledger.key")));
    } catch (IOException e) {
      throw new LedgerException(
          "The old key cannot be kept in "
              + copy
              + ": "
              + FileFault.why(e)
              + ". Nothing was changed; name a new file in a place that can be written to.",
          e);
    }
  }

  /**
   * Puts the next pair in place, after the entry that vouches for it was committed. A crash before
   * or within this leaves both pairs; the newest checkpoint says which one signs, and whoever opens
   * the log next finishes this.
   */
  public void install(LogKey next) {
    try {
      pairs.install(next);
    } catch (IOException e) {
      throw new LedgerException(
          "The log's key was changed and that is on record, but its files in "
              + files.directory()
              + " could not be put in place: "
              + FileFault.why(e)
              + ". Keep ledger.key.next: it signs now. The next command that may write there finishes"
              + " this.",
          e);
    }
  }

  /**
   * Finishes a change that was cut short, unless somebody is at it; the key is found either way.
   */
  public static void finish(LedgerFiles files, LogKey key) {
    KeyPairs pairs = new KeyPairs(files.directory());
    if (!pairs.pending(key)) {
      return;
    }
    try (FileChannel held = tryLock(files)) {
      if (held != null) {
        pairs.install(key);
      }
    } catch (IOException e) {
      // Without the right to move files: the next one who has it finishes.
      return;
    }
  }

  private static LedgerException failed(LedgerFiles files, IOException e) {
    return new LedgerException(
        "The next key cannot be written to "
            + files.directory()
            + ": "
            + FileFault.beside(files.directory(), e)
            + ". Nothing was changed. Run as the user who owns the directory, or once as root, who"
            + " gives files that are not that user's back to him.",
        e);
  }

  @Override
  public void close() {
    try {
      lock.close();
    } catch (IOException e) {
      throw failed(files, e);
    }
  }
}
