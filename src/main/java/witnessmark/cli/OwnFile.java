package witnessmark.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import witnessmark.ledger.FileFault;

/** A new file that its owner alone may read, from its first byte on. */
final class OwnFile {
  private OwnFile() {}

  /** Refuses to go on where such a file exists: a key that was there would be lost. */
  static void mustBeNew(Path file) {
    if (Files.exists(file)) {
      throw new Refusal(
          Exit.SURROUNDINGS, file + " exists already and stays as it is; name another with --out");
    }
  }

  static void write(Path file, String text) {
    try {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      Files.write(file, text.getBytes(StandardCharsets.UTF_8), StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          file + " cannot be written: " + FileFault.why(e) + "; name a place that can be");
    }
  }
}
