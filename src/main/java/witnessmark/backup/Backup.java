package witnessmark.backup;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import witnessmark.ledger.Durable;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.Modes;
import witnessmark.ledger.sqlite.OnlineCopy;
import witnessmark.ledger.verify.Report;

/**
 * A backup: a directory laid out like a data directory, with {@code ledger.db}, {@code ledger.pub}
 * and, only where that was asked for, {@code ledger.key}.
 *
 * <p>It is made under the name with {@code .unfinished} behind it, and gets its own name when it
 * was verified and is on disk. A crash at any step before leaves the unfinished directory, which
 * the next backup of that name takes over.
 */
public final class Backup {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);
  private static final String LOCK = "backup.lock";
  private static final List<String> PARTS =
      List.of(
          "ledger.db",
          "ledger.db-journal",
          "ledger.db-wal",
          "ledger.db-shm",
          "ledger.pub",
          "ledger.key");

  private final LedgerFiles log;
  private final String verifier;
  private final boolean withKey;

  /**
   * @param verifier the log's verifier key, also an earlier one
   * @param withKey whether the private key goes into it
   */
  public Backup(LedgerFiles log, String verifier, boolean withKey) {
    this.log = log;
    this.verifier = verifier;
    this.withKey = withKey;
  }

  /**
   * The directory that a backup will be: the one that is named, or within it where it exists.
   *
   * @param log the log that it is to be of
   * @throws CannotException when there is something in the way, or the place is no good one
   */
  public static Path place(Path named, LedgerFiles log, Instant now) {
    Path target = named.toAbsolutePath().normalize();
    Path above = Files.isDirectory(target) ? target : target.getParent();
    if (!Files.isDirectory(above)) {
      throw new CannotException(
          "The directory "
              + above
              + " does not exist (is the disk mounted?). Make it, or name another place.");
    }
    if (within(above, log.directory())) {
      throw new CannotException(
          named
              + " is in the data directory, which a backup is to outlive. Name a place elsewhere,"
              + " best on another disk.");
    }
    if (Files.isDirectory(target)) {
      if (Files.exists(target.resolve("ledger.db"))) {
        throw new CannotException(
            named + " holds a log already, and no backup overwrites one. Name a new directory.");
      }
      target = target.resolve("witnessmark-" + STAMP.format(now));
    }
    if (Files.exists(target)) {
      throw new CannotException(
          target + " exists already, and no backup overwrites anything. Name a new directory.");
    }
    return target;
  }

  private static boolean within(Path place, Path directory) {
    try {
      return place.toRealPath().startsWith(directory.toRealPath());
    } catch (IOException e) {
      return false; // what cannot be resolved cannot be written to either, and that is told then
    }
  }

  /**
   * Makes the backup.
   *
   * @param copying hears how many hundredths are copied
   * @param verifying hears how many entries are verified
   * @return what the verifier saw in it
   * @throws CannotException when the log does not verify or has not the key that was asked for
   * @throws IOException when it cannot be written; the message says what to do
   */
  public Report make(Path target, LongConsumer copying, LongConsumer verifying) throws IOException {
    Path work = target.resolveSibling(target.getFileName() + ".unfinished");
    FileChannel lock = begin(work);
    try {
      Checked checked = fill(work, copying, verifying);
      Files.delete(work.resolve(LOCK));
      Durable.force(work);
      Files.move(work, target, StandardCopyOption.ATOMIC_MOVE);
      Durable.force(target.getParent());
      return checked.report();
    } catch (IOException | RuntimeException e) {
      remove(work);
      throw e;
    } finally {
      lock.close();
    }
  }

  private static FileChannel begin(Path work) throws IOException {
    try {
      if (!Files.isDirectory(work)) {
        Files.createDirectory(work, Modes.of("rwxr-x---"));
      }
      FileChannel channel =
          FileChannel.open(work.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock held = channel.tryLock();
      if (held == null) {
        channel.close();
        throw new CannotException(
            "Another backup is being made in " + work + ". Wait for it, or name another place.");
      }
      clear(work);
      return channel;
    } catch (IOException e) {
      throw new IOException(
          work + " cannot be written: " + FileFault.why(e) + ". Name a place that can be", e);
    }
  }

  private Checked fill(Path work, LongConsumer copying, LongConsumer verifying) throws IOException {
    Path copy = work.resolve("ledger.db");
    OnlineCopy.copy(log.database(), copy, copying);
    Checked checked =
        Checked.of(
            copy,
            verifier,
            List.of(),
            verifying,
            "See all with: witnessmark ledger verify. To keep the damaged log as it is, stop the"
                + " daemon and copy the whole data directory.");
    Durable.force(copy);
    if (withKey) {
      LogKey key =
          keyOf(checked)
              .orElseThrow(
                  () ->
                      new CannotException(
                          "The private key that signs the log cannot be read in "
                              + log.directory()
                              + ". Run as the user who owns it, or leave out --with-key."));
      Durable.createPrivate(work.resolve("ledger.key"), key.pem());
      Durable.create(work.resolve("ledger.pub"), key.verifierLine() + "\n");
    } else {
      Durable.create(work.resolve("ledger.pub"), Files.readString(log.verifier()));
    }
    return checked;
  }

  private Optional<LogKey> keyOf(Checked checked) {
    try {
      return checked.key(log.keys());
    } catch (LedgerException e) {
      // None that can be read is none.
      return Optional.empty();
    }
  }

  private static void remove(Path work) throws IOException {
    clear(work);
    Files.deleteIfExists(work.resolve(LOCK));
    Files.deleteIfExists(work);
  }

  private static void clear(Path work) throws IOException {
    for (String part : PARTS) {
      Files.deleteIfExists(work.resolve(part));
    }
  }
}
