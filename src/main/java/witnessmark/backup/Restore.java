package witnessmark.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;
import witnessmark.ledger.DirectoryLock;
import witnessmark.ledger.Durable;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Modes;
import witnessmark.ledger.Ownership;
import witnessmark.ledger.sqlite.OnlineCopy;
import witnessmark.ledger.verify.Kept;
import witnessmark.ledger.verify.Report;

/**
 * Puts a backup in the place of a log that is lost.
 *
 * <p>The log's file gets its name last. A crash at any step before leaves a directory without a
 * log, into which the same can be restored again.
 */
public final class Restore {
  private static final String COPY = "ledger.db.unfinished";

  private final LedgerFiles backup;
  private final LedgerFiles into;
  private final String verifier;

  /**
   * @param verifier the log's verifier key, also an earlier one
   */
  public Restore(LedgerFiles backup, LedgerFiles into, String verifier) {
    this.backup = backup;
    this.into = into;
    this.verifier = verifier;
  }

  /** Which checkpoints to compare with, of all that somebody kept. */
  public interface Since {
    /**
     * Those of a log of that many entries.
     *
     * @throws RuntimeException when the log is too short for one of them, to end it there
     */
    List<Kept> of(long entries);
  }

  /**
   * What was restored.
   *
   * @param report what the verifier saw in it
   * @param continued whether the key that signs it is there
   */
  public record Restored(Report report, boolean continued) {}

  /**
   * Verifies the backup and puts it in place.
   *
   * @throws CannotException when there is a log already, or the backup does not verify
   * @throws IOException when something cannot be read or written; the message says what to do
   */
  public Restored make(Since since, LongConsumer copying, LongConsumer verifying)
      throws IOException {
    if (into.exist()) {
      throw new CannotException(
          into.directory()
              + " has a log already, and no backup is put over one. Restore into a new directory"
              + " with --data; to give up the log that is here, stop the daemon and move the whole"
              + " directory away first, and keep it.");
    }
    mustBeAlone();
    boolean made = Files.notExists(into.directory());
    Files.createDirectories(into.directory(), Modes.of("rwxr-x---"));
    try (DirectoryLock lock = DirectoryLock.ofEmpty(into)) {
      try {
        return put(since, copying, verifying);
      } catch (IOException | RuntimeException e) {
        clear();
        lock.leaveNothing();
        throw e;
      }
    } catch (IOException | RuntimeException e) {
      if (made) {
        Files.deleteIfExists(into.directory());
      }
      throw e;
    }
  }

  /**
   * SQLite takes whatever lies beside a file under these names for a part of it. They are left to
   * whoever restores: what was recorded last may be in them alone, and has a use only together with
   * the file that is lost, under the name that it had.
   */
  private void mustBeAlone() throws IOException {
    List<Path> parts = new ArrayList<>();
    for (String name : List.of("ledger.db-wal", "ledger.db-journal")) {
      Path part = into.directory().resolve(name);
      if (Files.exists(part) && Files.size(part) > 0) {
        parts.add(part);
      }
    }
    if (!parts.isEmpty()) {
      String names = parts.stream().map(Path::toString).collect(Collectors.joining(" "));
      Path lost = into.directory().resolve("lost");
      throw new CannotException(
          into.directory()
              + " still holds a part of the log that was here, which would be mixed into the"
              + " restored one: what was recorded last may be in it alone. Stop the daemon, move it"
              + " away, keep it, and restore again:\n  mkdir "
              + lost
              + " && mv "
              + names
              + " "
              + lost);
    }
  }

  /** Of parts of a log these hold nothing: whoever only reads leaves them behind. */
  private void sweep() throws IOException {
    mustBeAlone();
    for (String name : List.of("ledger.db-wal", "ledger.db-journal", "ledger.db-shm")) {
      Files.deleteIfExists(into.directory().resolve(name));
    }
  }

  private Restored put(Since since, LongConsumer copying, LongConsumer verifying)
      throws IOException {
    Path copy = into.directory().resolve(COPY);
    clear();
    long entries = OnlineCopy.copy(backup.database(), copy, copying);
    Checked checked =
        Checked.of(
            copy,
            verifier,
            since.of(entries),
            verifying,
            "Take another backup. What this one still holds can be read with: witnessmark trace"
                + " --data "
                + backup.directory());
    RestoredKeys keys = new RestoredKeys(backup, into, verifier, checked);
    try {
      boolean continued = keys.put();
      Ownership.give(copy, into.directory());
      Durable.force(copy);
      sweep();
      Files.move(copy, into.database(), StandardCopyOption.ATOMIC_MOVE);
      Durable.force(into.directory());
      return new Restored(checked.report(), continued);
    } catch (IOException | RuntimeException e) {
      if (!into.exist()) {
        keys.takeBack();
      }
      throw e;
    }
  }

  private void clear() throws IOException {
    for (String end : List.of("", "-journal", "-wal", "-shm")) {
      Files.deleteIfExists(into.directory().resolve(COPY + end));
    }
  }
}
