package witnessmark.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import witnessmark.ledger.Durable;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.Modes;
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
    boolean made = Files.notExists(into.directory());
    Files.createDirectories(into.directory(), Modes.of("rwxr-x---"));
    Path copy = into.directory().resolve(COPY);
    Files.deleteIfExists(copy);
    try {
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
      boolean continued = keys(checked);
      owned(copy);
      Durable.force(copy);
      Files.move(copy, into.database(), StandardCopyOption.ATOMIC_MOVE);
      Durable.force(into.directory());
      return new Restored(checked.report(), continued);
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(copy);
      if (made) {
        Files.deleteIfExists(into.directory());
      }
      throw e;
    }
  }

  /** Puts the keys in place; false when none that signs the log is at hand. */
  private boolean keys(Checked checked) throws IOException {
    Path secret = into.directory().resolve("ledger.key");
    if (Files.exists(secret)) {
      if (checked.key(into).isEmpty()) {
        throw new CannotException(
            secret
                + " does not sign this backup: it is the key of another log, or of this one before"
                + " or after a change of its key. Move it and ledger.pub away, keep them, and"
                + " restore again.");
      }
      return true;
    }
    Optional<LogKey> key = checked.key(backup);
    Files.deleteIfExists(into.verifier());
    if (key.isEmpty()) {
      Durable.create(into.verifier(), verifier + "\n");
      owned(into.verifier());
      return false;
    }
    Durable.create(into.verifier(), key.get().verifierLine() + "\n");
    owned(into.verifier());
    Durable.createPrivate(secret, key.get().pem());
    owned(secret);
    return true;
  }

  /**
   * Run by root, what is restored belongs to whom the directory belongs to, as the daemon needs.
   */
  private void owned(Path file) throws IOException {
    Files.setOwner(file, Files.getOwner(into.directory()));
  }
}
