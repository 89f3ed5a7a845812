package witnessmark.bench;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/**
 * The program as its users start it: the shaded jar, in a process of its own, with a working
 * directory and so with {@code ./witnessmark-data} there.
 *
 * @param directory where it runs
 * @param locale for its characters
 * @param prefix the words of a command that runs it, such as {@code nsenter}
 */
public record Program(Path directory, String locale, List<String> prefix) {
  public Program {
    prefix = List.copyOf(prefix);
  }

  /** In a locale of UTF-8. */
  public Program(Path directory) {
    this(directory, List.of());
  }

  /** Run by another command. */
  public Program(Path directory, List<String> prefix) {
    this(directory, "C.UTF-8", prefix);
  }

  /** The same in another locale. */
  public Program in(String other) {
    return new Program(directory, other, prefix);
  }

  /** A command as it is typed to a shell. */
  public String shell(String... arguments) {
    List<String> line = line(code());
    line.addAll(List.of(arguments));
    return String.join(" ", line);
  }

  /** Where the build put the jar. */
  public static Path jar() {
    return Path.of(System.getProperty("witnessmark.jar", "target/witnessmark.jar"))
        .toAbsolutePath();
  }

  /** Where no jar is built yet, the classes themselves: {@code -Dwitnessmark.jar=none}. */
  private static List<String> code() {
    return jar().endsWith("none")
        ? List.of("-cp", withoutTests(), "witnessmark.cli.Main")
        : List.of("-jar", jar().toString());
  }

  /** The tests log in another way. */
  private static String withoutTests() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(entry -> !entry.endsWith("test-classes"))
        .collect(Collectors.joining(File.pathSeparator));
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
    return runLine(line(code()), arguments);
  }

  /** Runs the wrench simulator, a program of its own in the same jar. */
  public Process simulator(Path output, String... arguments) {
    List<String> line = line(List.of("-cp", jar().toString(), "wrenchsim.Main"));
    line.addAll(List.of(arguments));
    return start(line, output, output);
  }

  /** Starts a command that may be killed before its end. */
  public Process begin(Path output, String... arguments) {
    return daemon(output, Map.of(), arguments);
  }

  /** Runs it; what it writes is brought to the file by this process, whatever its own limits. */
  Process daemon(Path log, Map<String, String> environment, String... arguments) {
    List<String> line = line(code());
    line.addAll(List.of(arguments));
    ProcessBuilder builder = builder(line, environment).redirectErrorStream(true);
    try {
      Process process = builder.start();
      Thread copying = new Thread(() -> copy(process.getInputStream(), log), "log");
      copying.setDaemon(true);
      copying.start();
      return process;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void copy(InputStream from, Path log) {
    try (OutputStream to =
        Files.newOutputStream(log, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      from.transferTo(to);
    } catch (IOException e) {
      return; // its end
    }
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

  private List<String> line(List<String> more) {
    List<String> line = new ArrayList<>(prefix);
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // Quick to start: what a test waits for most.
    line.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    line.add("-Xlog:disable");
    if (!jar().endsWith("none")) {
      line.add("-XX:SharedArchiveFile=" + Archive.FILE);
    }
    // Killed, it leaves the native libraries that it unpacked behind; the test's directory goes.
    line.add("-Djava.io.tmpdir=" + directory);
    line.addAll(more);
    return line;
  }

  private ProcessBuilder builder(List<String> line, Map<String, String> environment) {
    ProcessBuilder builder = new ProcessBuilder(line).directory(directory.toFile());
    builder.environment().remove("WITNESSMARK_DATA");
    builder.environment().put("COLUMNS", "80");
    builder.environment().put("LC_ALL", locale);
    builder.environment().putAll(environment);
    builder.redirectInput(ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()));
    return builder;
  }

  private Process start(List<String> line, Path out, Path err) {
    ProcessBuilder builder = builder(line, Map.of());
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
