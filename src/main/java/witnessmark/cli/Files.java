package witnessmark.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import witnessmark.ledger.FileFault;

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

  static UncheckedIOException unreadable(Path file, IOException e) {
    return new UncheckedIOException(
        file + " cannot be read: " + FileFault.why(e) + "; name a readable file", e);
  }
}
