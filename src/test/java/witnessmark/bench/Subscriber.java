package witnessmark.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.awaitility.Awaitility;

/**
 * A {@code mosquitto_sub} that stays, with a session that the broker keeps, and writes down all it
 * hears.
 */
public final class Subscriber implements AutoCloseable {
  private final Process process;
  private final List<String> payloads = new CopyOnWriteArrayList<>();

  private Subscriber(Process process) {
    this.process = process;
    Thread reader = new Thread(this::read, "subscriber");
    reader.setDaemon(true);
    reader.start();
  }

  /** Subscribes, and returns once the broker has said yes. */
  public static Subscriber to(Mosquitto broker, String name, String topic) {
    try {
      Process process =
          new ProcessBuilder(
                  "mosquitto_sub",
                  "-h",
                  "127.0.0.1",
                  "-p",
                  "" + broker.port(),
                  "-q",
                  "1",
                  "-c",
                  "-i",
                  name,
                  "-t",
                  topic)
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      Subscriber subscriber = new Subscriber(process);
      Awaitility.await().until(() -> broker.log().contains("Sending SUBACK to " + name));
      return subscriber;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void read() {
    try (BufferedReader lines = process.inputReader(UTF_8)) {
      lines.lines().forEach(payloads::add);
    } catch (IOException | UncheckedIOException e) {
      // its end
    }
  }

  /** What it has heard so far, oldest first. */
  public List<String> payloads() {
    return List.copyOf(payloads);
  }

  /** The documents it has heard so far. */
  public List<JsonNode> documents() {
    return payloads.stream().map(Json::of).toList();
  }

  /** Waits for that many messages in all; the last one's document. */
  public JsonNode await(int count) {
    Awaitility.await().atMost(Duration.ofSeconds(20)).until(() -> payloads.size() >= count);
    return Json.of(payloads.get(count - 1));
  }

  /** Waits for that many verdicts in all; the {@code data} of the last. */
  public Map<String, String> data(int count) {
    return Json.fields(await(count).path("data"));
  }

  @Override
  public void close() {
    process.destroyForcibly();
    Exit.await(process);
  }
}
