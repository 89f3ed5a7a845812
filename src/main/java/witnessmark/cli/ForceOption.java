package witnessmark.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.Modes;

/** The {@code --force} option: a file that exists is kept unless it is given. */
final class ForceOption {
  @Option(names = "--force", description = "Replace the file to be written where it exists.")
  private boolean given;

  boolean given() {
    return given;
  }

  /** Refuses a file that exists before any work is done for it; null is none. */
  void check(Path file) {
    if (file != null && !given && java.nio.file.Files.exists(file)) {
      throw exists(file);
    }
  }

  /** Writes what the command line asks for. */
  void write(Path file, byte[] bytes) {
    try {
      // others cannot write to it whatever the umask
      if (!given || java.nio.file.Files.notExists(file)) {
        java.nio.file.Files.createFile(file, Modes.of("rw-r--r--"));
      }
      java.nio.file.Files.write(file, bytes);
    } catch (FileAlreadyExistsException e) {
      throw exists(file);
    } catch (IOException e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          file + " cannot be written: " + FileFault.why(e) + "; name a place that can be");
    }
  }

  private static Refusal exists(Path file) {
    return new Refusal(
        Exit.SURROUNDINGS, file + " exists already; name a new file, or replace it with --force.");
  }
}
