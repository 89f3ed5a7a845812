package witnessmark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.Modes;

/** Reads what the command line names. */
final class Files {
  private Files() {}

  static String text(Path file) {
    try {
      return java.nio.file.Files.readString(file);
    } catch (CharacterCodingException e) {
      throw new UncheckedIOException(file + ":1:1: the file is not UTF-8; save it as UTF-8", e);
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  static byte[] bytes(Path file) {
    try {
      return java.nio.file.Files.readAllBytes(file);
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  /** The first bytes of a file, at most so many. */
  static byte[] bytes(Path file, int most) {
    try (InputStream in = java.nio.file.Files.newInputStream(file)) {
      return in.readNBytes(most);
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  /** Writes what the command line asks for, over what was there. */
  static void write(Path file, byte[] bytes) {
    try {
      make(file);
      java.nio.file.Files.write(file, bytes);
    } catch (IOException e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          file + " cannot be written: " + FileFault.why(e) + "; name a place that can be");
    }
  }

  /** Makes the file where there is none, so that others cannot write to it whatever the umask. */
  private static void make(Path file) throws IOException {
    if (java.nio.file.Files.notExists(file)) {
      java.nio.file.Files.createFile(file, Modes.of("rw-r--r--"));
    }
  }

  /** Writes a file that must not be there yet. */
  static void writeNew(Path file, byte[] bytes) throws IOException {
    java.nio.file.Files.createFile(file, Modes.of("rw-r--r--"));
    java.nio.file.Files.write(file, bytes);
  }

  static UncheckedIOException unreadable(Path file, IOException e) {
    return new UncheckedIOException(
        file + " cannot be read: " + FileFault.why(e) + "; name a readable file", e);
  }
}
