package witnessmark.bench;

import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The daemon in a process of its own, to be stopped in order or killed. */
public final class DaemonProcess implements AutoCloseable {
  /** The exit status after an orderly end on SIGTERM. */
  public static final int TERMINATED = 143;

  private static final Duration LONG = Duration.ofSeconds(90);

  private final Process process;
  private final Path log;
  private final Instant started;

  private DaemonProcess(Process process, Path log, Instant started) {
    this.process = process;
    this.log = log;
    this.started = started;
  }

  /** Starts it with a configuration file; it may not listen yet. */
  public static DaemonProcess start(Program program, Path config, String... options) {
    return start(program, config, Map.of(), options);
  }

  /** Starts it with a configuration file and more in its environment; it may not listen yet. */
  public static DaemonProcess start(
      Program program, Path config, Map<String, String> environment, String... options) {
    try {
      Path log = Files.createTempFile(program.directory(), "daemon", ".log");
      Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
      List<String> line = new ArrayList<>(List.of("run", "--config", config.toString()));
      line.addAll(List.of(options));
      return new DaemonProcess(
          program.daemon(log, environment, line.toArray(String[]::new)), log, now);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits until it has opened its log and listens; links may still be down. */
  public DaemonProcess awaitListening() {
    await()
        .atMost(LONG)
        .pollInterval(Duration.ofMillis(20))
        .until(() -> ended() || log().contains("Bridge: listening"));
    if (ended()) {
      throw new AssertionError("the daemon ended with " + process.exitValue() + ":\n" + log());
    }
    return this;
  }

  /** Waits until a link of its is up for the first time. */
  public DaemonProcess awaitUp(String link) {
    awaitListening();
    await()
        .atMost(LONG)
        .pollInterval(Duration.ofMillis(20))
        .until(() -> log().matches("(?s).* link=\"" + link + "\" from=\"[A-Z]+\" to=\"UP\".*"));
    return this;
  }

  /** Waits until its own retained health, not one left behind, says {@code ok}. */
  public DaemonProcess awaitOk(Mosquitto broker, String bridge) {
    awaitListening();
    await().atMost(LONG).until(() -> isOk(broker, bridge));
    return this;
  }

  private boolean isOk(Mosquitto broker, String bridge) {
    String topic = "witnessmark/v1/" + bridge + "/health";
    return broker.take(topic, 1, Duration.ofSeconds(2)).stream()
        .map(Json::of)
        .anyMatch(health -> health.path("state").asText().equals("ok") && own(health));
  }

  private boolean own(JsonNode health) {
    return !Instant.parse(health.path("since").asText()).isBefore(started);
  }

  /** The number of its process. */
  public long pid() {
    return process.pid();
  }

  public boolean ended() {
    return !process.isAlive();
  }

  /** Waits for it to end by itself; its exit status. */
  public int status() {
    return Exit.await(process);
  }

  /** What it has written to its standard output and error so far. */
  public String log() {
    try {
      return Files.readString(log);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Ends it as a power cut would: SIGKILL. */
  public void kill() {
    process.destroyForcibly();
    Exit.await(process);
  }

  /** Asks it to end (SIGTERM) and waits; its exit status. */
  public int stop() {
    process.destroy();
    return Exit.await(process);
  }

  @Override
  public void close() {
    kill();
  }
}
