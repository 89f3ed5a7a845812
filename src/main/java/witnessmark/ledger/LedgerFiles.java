package witnessmark.ledger;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;

/**
 * The files of a data directory.
 *
 * @param directory where they are
 */
public record LedgerFiles(Path directory) {
  public Path database() {
    return directory.resolve("ledger.db");
  }

  /** What is committed and not yet in the database file. */
  public Path wal() {
    return directory.resolve("ledger.db-wal");
  }

  private Path secret() {
    return directory.resolve("ledger.key");
  }

  public Path verifier() {
    return directory.resolve("ledger.pub");
  }

  /** Whether a log was begun here. */
  public boolean exist() {
    return Files.exists(database());
  }

  /**
   * Refuses to go on where no log was begun, so that a mistyped path begins no second history.
   *
   * @throws LedgerException when there is no log
   */
  public void mustExist() {
    if (Files.isRegularFile(directory)) {
      throw new LedgerException(
          directory + " is a file; name the directory that the log is in with --data.");
    }
    if (!exist()) {
      throw new LedgerException(
          "No log in "
              + directory
              + ". Begin one there with: witnessmark ledger create --data "
              + directory
              + ", or name the right directory with --data.");
    }
  }

  /**
   * The log's key.
   *
   * @throws LedgerException when it is missing or unreadable
   */
  public LogKey key() {
    try {
      return LogKey.read(Files.readString(secret()), Files.readString(verifier()));
    } catch (NoSuchFileException e) {
      throw keyless(Path.of(e.getFile()).getFileName() + ": " + FileFault.why(e), e);
    } catch (IOException e) {
      throw keyless(FileFault.why(e), e);
    } catch (IllegalArgumentException e) {
      throw keyless(e.getMessage(), e);
    }
  }

  private LedgerException keyless(String why, Exception cause) {
    return new LedgerException(
        "The log's key pair in "
            + directory
            + " cannot be read ("
            + why
            + "). Appending needs it:"
            + " restore ledger.key and ledger.pub from a backup, or run as the user who owns them.",
        cause);
  }

  /**
   * Makes the directory and a new key in it. A crash here leaves a directory without a log, which
   * the next attempt may use.
   *
   * @throws LedgerException when that fails or a log exists
   */
  public LogKey begin() {
    if (exist()) {
      throw new LedgerException("A log exists already in " + directory + "; it goes on as it is.");
    }
    byte[] suffix = new byte[8];
    new SecureRandom().nextBytes(suffix);
    LogKey key = LogKey.generate("witnessmark.local/log/" + HexFormat.of().formatHex(suffix));
    try {
      Files.createDirectories(directory);
      Files.deleteIfExists(secret());
      Files.createFile(
          secret(),
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      Files.writeString(secret(), key.pem(), StandardOpenOption.TRUNCATE_EXISTING);
      Files.writeString(verifier(), key.verifierLine() + "\n", StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new LedgerException(
          "No log can be begun in "
              + directory
              + ": "
              + FileFault.why(e)
              + ". Name a new or empty directory that you may write to with --data.",
          e);
    }
    return key;
  }
}
