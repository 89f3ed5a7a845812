package witnessmark.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * The jar's classes as the JVM wants them in memory, dumped once beside it: the many short
 * processes of the tests start a third faster. A JVM that cannot use it does without.
 */
final class Archive {
  static final Path FILE = dump();

  private Archive() {}

  private static Path dump() {
    Path jar = Program.jar();
    Path file = jar.resolveSibling("witnessmark.jsa");
    try {
      if (Files.exists(file)
          && Files.getLastModifiedTime(file).compareTo(Files.getLastModifiedTime(jar)) > 0) {
        return file;
      }
      Files.deleteIfExists(file);
      Path trial = Files.createTempDirectory(jar.getParent(), "trial");
      Process process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:+UseSerialGC",
                  "-Xlog:disable",
                  "-XX:ArchiveClassesAtExit=" + file,
                  "-jar",
                  jar.toString(),
                  "ledger",
                  "create",
                  "--data",
                  trial.resolve("data").toString())
              .redirectErrorStream(true)
              .redirectOutput(trial.resolve("output").toFile())
              .start();
      if (!process.waitFor(60, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return file;
    }
  }
}
