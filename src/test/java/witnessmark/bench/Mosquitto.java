package witnessmark.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A mosquitto broker of its own for one test, on a free port of 127.0.0.1, with a store that
 * survives a kill. It keeps its port and files over {@link #kill} and {@link #restart}.
 */
public final class Mosquitto implements AutoCloseable {
  private static final String PROGRAM = "/usr/sbin/mosquitto";

  private final Path directory;
  private final int port = FreePort.next();
  private final boolean verbose;
  private Process process;

  private Mosquitto(Path directory, boolean verbose) {
    this.directory = directory;
    this.verbose = verbose;
  }

  /**
   * Starts a broker that neither logs nor stores, for measuring something else than the broker.
   * What it has queued lives as long as it does.
   */
  public static Mosquitto quiet(Path directory) {
    Mosquitto broker = new Mosquitto(directory, false);
    broker.begin(
        List.of(
            "listener " + broker.port + " 127.0.0.1",
            "max_queued_messages 100000",
            "allow_anonymous true",
            "set_tcp_nodelay true",
            "log_type error"));
    return broker;
  }

  /**
   * Starts a broker whose files lie under the directory and returns once it accepts connections.
   *
   * @param extra lines of its configuration, set for its only listener; {@code allow_anonymous
   *     true} stands unless one of them says otherwise
   */
  public static Mosquitto start(Path directory, String... extra) {
    Mosquitto broker = new Mosquitto(directory, true);
    List<String> lines = new ArrayList<>();
    lines.add("listener " + broker.port + " 127.0.0.1");
    lines.add("user root"); // heeded only when started by root: keeps the store writable
    lines.add("max_queued_messages 100000");
    lines.add("persistence true");
    lines.add("persistence_location " + broker.store() + "/");
    lines.add("autosave_on_changes true");
    lines.add("autosave_interval 1");
    lines.addAll(List.of(extra));
    if (lines.stream().noneMatch(line -> line.startsWith("allow_anonymous"))) {
      lines.add("allow_anonymous true");
    }
    broker.begin(lines);
    return broker;
  }

  private void begin(List<String> lines) {
    try {
      Files.createDirectories(store());
      Files.write(directory.resolve("mosquitto.conf"), lines);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    restart();
  }

  /** The TCP port it listens on. */
  public int port() {
    return port;
  }

  /** Its address for a client without TLS. */
  public String url() {
    return "tcp://127.0.0.1:" + port;
  }

  /** What it has written to its log so far. */
  public String log() {
    try {
      return Files.readString(directory.resolve("mosquitto.log"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Starts it again, after {@link #kill}, with whatever is in its store. */
  public void restart() {
    List<String> command =
        new ArrayList<>(List.of(PROGRAM, "-c", directory.resolve("mosquitto.conf").toString()));
    if (verbose) {
      command.add("-v");
    }
    try {
      process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(
                  ProcessBuilder.Redirect.appendTo(directory.resolve("mosquitto.log").toFile()))
              .start();
      awaitListening();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Ends it as a power cut would, without a chance to save. */
  public void kill() {
    process.destroyForcibly();
    Exit.await(process);
  }

  /** Stops it in an orderly way; its store is saved. */
  public void stop() {
    process.destroy();
    Exit.await(process);
  }

  /** Freezes it: connections stay, nothing answers, until {@link #thaw}. */
  public void freeze() {
    Exit.run("kill", "-STOP", Long.toString(process.pid()));
  }

  /** Lets a frozen broker run on. */
  public void thaw() {
    Exit.run("kill", "-CONT", Long.toString(process.pid()));
  }

  /** Removes its store, so that a restarted broker knows no session and no message. */
  public void loseStore() {
    try (Stream<Path> files = Files.list(store())) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Publishes each line as one message with QoS 1 and returns once the broker has them all. */
  public void publish(String topic, List<String> lines) {
    try {
      Process publisher =
          new ProcessBuilder(
                  "mosquitto_pub", "-h", "127.0.0.1", "-p", "" + port, "-q", "1", "-t", topic, "-l")
              .inheritIO()
              .redirectInput(ProcessBuilder.Redirect.PIPE)
              .start();
      try (OutputStream in = publisher.getOutputStream()) {
        in.write((String.join("\n", lines) + "\n").getBytes(UTF_8));
      }
      Exit.succeed(publisher);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Publishes exactly these bytes as one message with QoS 1. */
  public void publish(String topic, byte[] payload) {
    try {
      Process publisher =
          new ProcessBuilder(
                  "mosquitto_pub", "-h", "127.0.0.1", "-p", "" + port, "-q", "1", "-t", topic, "-s")
              .inheritIO()
              .redirectInput(ProcessBuilder.Redirect.PIPE)
              .start();
      try (OutputStream in = publisher.getOutputStream()) {
        in.write(payload);
      }
      Exit.succeed(publisher);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Subscribes, waits for the next messages (retained ones too) and returns their payloads. */
  public List<String> take(String topic, int count, Duration longest) {
    try {
      Process subscriber =
          new ProcessBuilder(
                  "mosquitto_sub",
                  "-h",
                  "127.0.0.1",
                  "-p",
                  "" + port,
                  "-q",
                  "1",
                  "-t",
                  topic,
                  "-C",
                  "" + count,
                  "-W",
                  "" + longest.toSeconds())
              .start();
      List<String> lines =
          new String(subscriber.getInputStream().readAllBytes(), UTF_8).lines().toList();
      Exit.await(subscriber);
      return lines;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    kill();
  }

  private Path store() {
    return directory.resolve("store");
  }

  private void awaitListening() throws InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (System.nanoTime() < deadline && process.isAlive()) {
      try {
        new Socket("127.0.0.1", port).close();
        return;
      } catch (IOException notYet) {
        Thread.sleep(20);
      }
    }
    throw new IllegalStateException("mosquitto does not listen on " + port + ":\n" + log());
  }
}
