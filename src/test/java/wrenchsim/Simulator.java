package wrenchsim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The simulator as its users start it: a process of its own. */
final class Simulator implements AutoCloseable {
  private final Process process;
  private final Path out;
  private final Path err;

  Simulator(Path directory, String... args) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), "wrenchsim.Main"));
    command.addAll(List.of(args));
    out = Files.createTempFile(directory, "simulator", ".out");
    err = Files.createTempFile(directory, "simulator", ".err");
    process =
        new ProcessBuilder(command)
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
  }

  /** Waits for its end; its exit status. */
  int status() throws InterruptedException, IOException {
    if (!process.waitFor(90, TimeUnit.SECONDS)) {
      throw new AssertionError("still running; it said: " + out() + err());
    }
    return process.exitValue();
  }

  String out() throws IOException {
    return Files.readString(out);
  }

  String err() throws IOException {
    return Files.readString(err);
  }

  @Override
  public void close() {
    process.destroy();
    process.onExit().join();
  }
}
