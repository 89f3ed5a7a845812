package witnessmark.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The program as its users start it: the shaded jar, in a process of its own, with a working
 * directory and so with {@code ./witnessmark-data} there.
 *
 * @param directory where it runs
 * @param locale for its characters
 */
public record Program(Path directory, String locale) {
  /** In a locale of UTF-8. */
  public Program(Path directory) {
    this(directory, "C.UTF-8");
  }

  /** The same in another locale. */
  public Program in(String other) {
    return new Program(directory, other);
  }

  /** A command as it is typed to a shell. */
  public String shell(String... arguments) {
    List<String> line = line("-jar", jar().toString());
    line.addAll(List.of(arguments));
    return String.join(" ", line);
  }

  /** Where the build put the jar. */
  public static Path jar() {
    return Path.of(System.getProperty("witnessmark.jar", "target/witnessmark.jar"))
        .toAbsolutePath();
  }

  /**
   * How a command ended.
   *
   * @param command its words, for messages
   * @param status its exit status
   * @param out all it wrote to standard output
   * @param err all it wrote to standard error
   */
  public record Ended(String command, int status, String out, String err) {
    /** The output of a command that had to succeed. */
    public String orThrow() {
      if (status != 0) {
        throw new AssertionError(command + " ended with " + status + ":\n" + out + err);
      }
      return out;
    }
  }

  /** Runs a command and waits for its end. */
  public Ended run(String... arguments) {
    return runLine(line("-jar", jar().toString()), arguments);
  }

  /** Runs the wrench simulator, a program of its own in the same jar. */
  public Process simulator(Path output, String... arguments) {
    List<String> line = line("-cp", jar().toString(), "wrenchsim.Main");
    line.addAll(List.of(arguments));
    return start(line, output, output);
  }

  /** Starts a command that may be killed before its end. */
  public Process begin(Path output, String... arguments) {
    return daemon(output, Map.of(), arguments);
  }

  Process daemon(Path log, Map<String, String> environment, String... arguments) {
    List<String> line = line("-jar", jar().toString());
    line.addAll(List.of(arguments));
    return start(line, environment, log, log);
  }

  private Ended runLine(List<String> line, String... arguments) {
    line.addAll(List.of(arguments));
    try {
      Path out = Files.createTempFile(directory, "command", ".out");
      Path err = Files.createTempFile(directory, "command", ".err");
      int status = await(start(line, out, err), arguments);
      Ended ended =
          new Ended(
              String.join(" ", arguments), status, Files.readString(out), Files.readString(err));
      Files.delete(out);
      Files.delete(err);
      return ended;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int await(Process process, String... arguments) {
    try {
      if (!process.waitFor(120, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError(String.join(" ", arguments) + " did not end within 120 s");
      }
      return process.exitValue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private List<String> line(String... more) {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // Quick to start: what a test waits for most.
    line.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    line.addAll(List.of("-Xlog:disable", "-XX:SharedArchiveFile=" + Archive.FILE));
    // Killed, it leaves the native libraries that it unpacked behind; the test's directory goes.
    line.add("-Djava.io.tmpdir=" + directory);
    line.addAll(List.of(more));
    return line;
  }

  private Process start(List<String> line, Path out, Path err) {
    return start(line, Map.of(), out, err);
  }

  private Process start(List<String> line, Map<String, String> environment, Path out, Path err) {
    ProcessBuilder builder = new ProcessBuilder(line).directory(directory.toFile());
    builder.environment().remove("WITNESSMARK_DATA");
    builder.environment().put("COLUMNS", "80");
    builder.environment().put("LC_ALL", locale);
    builder.environment().putAll(environment);
    builder.redirectInput(ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()));
    builder.redirectOutput(ProcessBuilder.Redirect.appendTo(out.toFile()));
    if (out.equals(err)) {
      builder.redirectErrorStream(true);
    } else {
      builder.redirectError(ProcessBuilder.Redirect.appendTo(err.toFile()));
    }
    try {
      return builder.start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
