package witnessmark.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.TimeUnit;

/** How a child process ended. */
final class Exit {
  private Exit() {}

  /** Waits, at most 30 seconds, and returns the exit status. */
  static int await(Process process) {
    try {
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IllegalStateException(process.info() + " did not end within 30 s");
      }
      return process.exitValue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  static void succeed(Process process) {
    int status = await(process);
    if (status != 0) {
      throw new IllegalStateException(process.info() + " ended with " + status);
    }
  }

  static void run(String... command) {
    try {
      succeed(new ProcessBuilder(command).inheritIO().start());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
