package witnessmark.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

  public Path secret() {
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
    if (Files.isDirectory(directory) && !Files.isExecutable(directory)) {
      throw new LedgerException(
          "This user may not look into "
              + directory
              + ". Run as the user who owns it, or as one of its group.");
    }
    if (!exist()) {
      throw new LedgerException(
          lost()
              .orElse(
                  "No log in "
                      + directory
                      + ". Is it the right directory (--data, WITNESSMARK_DATA)? To begin one:"
                      + " witnessmark ledger create --data "
                      + directory));
    }
  }

  /**
   * That something of a log lies here whose {@code ledger.db} is gone, and how to get it back; for
   * where none {@link #exist exists}.
   */
  public Optional<String> lost() {
    return Leftovers.in(directory).sentence();
  }

  /** What others may do with the log's files that they should not, and the way out. */
  public Optional<String> exposed() {
    return exposedKey().or(() -> exposedFiles().stream().findFirst());
  }

  /** What others may do with the log's key that they should not, and the way out. */
  public Optional<String> exposedKey() {
    String key = Modes.excess(secret(), "rw-------");
    return key.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "The log's key "
                + secret()
                + " is open to others ("
                + key
                + "): who reads it can sign another history. Run: chmod 600 "
                + secret());
  }

  /** What others may write that they should not, each with the way out. */
  public List<String> exposedFiles() {
    List<String> found = new ArrayList<>();
    for (Path path : List.of(directory, database(), verifier())) {
      String excess = Modes.excess(path, "rwxr-xr-x");
      if (!excess.isEmpty()) {
        found.add(path + " may be written by others (" + excess + "). Run: chmod go-w " + path);
      }
    }
    return found;
  }

  /**
   * The key pairs that may sign: one, and while the key is being changed the next one after it.
   * Which of them does is told by the newest checkpoint.
   *
   * @throws LedgerException when there is none that can be read
   */
  public List<LogKey> keys() {
    try {
      return new KeyPairs(directory).read();
    } catch (NoSuchFileException e) {
      throw keyless(Path.of(e.getFile()).getFileName() + ": " + FileFault.why(e), e);
    } catch (IOException e) {
      throw keyless(FileFault.why(e), e);
    } catch (IllegalArgumentException e) {
      throw keyless(e.getMessage(), e);
    }
  }

  /** The pairs that the private keys here make with any of those verifier lines. */
  public List<LogKey> keysUnder(List<String> lines) {
    return new KeyPairs(directory).under(lines);
  }

  /** The pair that signed that checkpoint of that tree, if there is one. */
  public Optional<LogKey> keyOf(String note, long size, byte[] root) {
    return keys().stream().filter(k -> k.opens(note, size, root)).findFirst();
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
}
