package witnessmark.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Consumer;

/**
 * Begins a log where there is none and never was one.
 *
 * <p>Its database is made under the name {@code ledger.db.new}, then its keys are, and it gets its
 * own name last. So a crash on the way leaves {@code ledger.db.new}, which tells such a directory
 * from one whose log was lost; nothing that anybody needs is ever overwritten.
 */
public final class NewLog {
  static final String WORK = "ledger.db.new";

  private NewLog() {}

  /**
   * Begins it.
   *
   * @param tables makes the tables in an empty file, and closes it
   * @return its key
   * @throws LedgerException when a log, or something of one, is there, or it cannot be written;
   *     nothing is left behind then
   */
  public static LogKey begin(LedgerFiles files, Consumer<Path> tables) {
    Path directory = files.directory();
    if (files.exist()) {
      throw new LedgerException("A log exists already in " + directory + "; it goes on as it is.");
    }
    Leftovers.in(directory)
        .refusal()
        .ifPresent(
            why -> {
              throw new LedgerException(why);
            });
    byte[] suffix = new byte[8];
    new SecureRandom().nextBytes(suffix);
    LogKey key = LogKey.generate("witnessmark.local/log/" + HexFormat.of().formatHex(suffix));
    Deque<Path> made = new ArrayDeque<>();
    if (Files.notExists(directory)) {
      made.push(directory);
    }
    try {
      Files.createDirectories(directory, Modes.of("rwxr-x---"));
      write(files, key, tables, made);
      return key;
    } catch (IOException | RuntimeException e) {
      remove(made);
      if (e instanceof IOException io) {
        throw new LedgerException(
            "No log can be begun in "
                + directory
                + ": "
                + FileFault.beside(directory, io)
                + ". Name a new or empty directory that you may write to with --data.",
            e);
      }
      throw (RuntimeException) e;
    }
  }

  private static void write(LedgerFiles files, LogKey key, Consumer<Path> tables, Deque<Path> made)
      throws IOException {
    Path directory = files.directory();
    Path work = directory.resolve(WORK);
    for (String end : List.of("", "-journal", "-wal", "-shm")) {
      Path file = work.resolveSibling(WORK + end);
      Files.deleteIfExists(file);
      made.push(file);
    }
    // Whatever the umask; the database gives its other files the same mode.
    Files.createFile(work, Modes.of("rw-r-----"));
    tables.accept(work);
    Durable.force(work);
    // A crash before this leaves the file that the next attempt replaces.
    Files.createFile(files.verifier(), Modes.of("rw-r--r--"));
    made.push(files.verifier());
    Files.writeString(files.verifier(), key.verifierLine() + "\n");
    Durable.force(files.verifier());
    Files.createFile(files.secret(), Modes.of("rw-------"));
    made.push(files.secret());
    Files.writeString(files.secret(), key.pem());
    Durable.force(files.secret());
    for (Path file : List.of(work, files.verifier(), files.secret())) {
      Ownership.give(file, directory);
    }
    // A crash before this leaves keys that never signed, beside the file that says so.
    Files.move(work, files.database(), StandardCopyOption.ATOMIC_MOVE);
    Durable.force(directory);
  }

  private static void remove(Deque<Path> made) {
    try {
      for (Path file : made) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      return; // why nothing was begun is told all the same
    }
  }
}
