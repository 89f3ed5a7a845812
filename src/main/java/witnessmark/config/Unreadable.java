package witnessmark.config;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import witnessmark.ledger.FileFault;
import witnessmark.toml.Section;

/** Faults of files that the configuration names and that cannot be read. */
final class Unreadable {
  private Unreadable() {}

  /** Records a fault where the file cannot be read. */
  static void check(Section s, String key, Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      in.read();
    } catch (IOException e) {
      fault(s, key, file.toString(), e);
    }
  }

  /**
   * Records the fault.
   *
   * @param what the file, in words
   */
  static void fault(Section s, String key, String what, IOException why) {
    s.fault(key, what + " cannot be read: " + FileFault.why(why), next(why));
  }

  private static String next(IOException why) {
    if (why instanceof AccessDeniedException) {
      return "let the user who runs the daemon read it, and look into its directory";
    }
    return why instanceof CharacterCodingException
        ? "save it as UTF-8"
        : "name a readable file; its path is relative to this file";
  }
}
