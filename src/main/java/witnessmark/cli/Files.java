package witnessmark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import witnessmark.ledger.FileFault;
import witnessmark.toml.Utf8;

/** Reads what the command line names. */
final class Files {
  private Files() {}

  static String text(Path file) {
    try {
      return Utf8.text(file.toString(), java.nio.file.Files.readAllBytes(file));
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

  static UncheckedIOException unreadable(Path file, IOException e) {
    return new UncheckedIOException(
        file + " cannot be read: " + FileFault.why(e) + "; name a readable file", e);
  }
}
