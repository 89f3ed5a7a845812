package witnessmark.soak;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import picocli.CommandLine;

/** A bench where one unit after the other is opened, confirmed, tightened and closed. */
final class Station {
  private final int number;
  private final String broker;
  private final Path truth;
  private final List<String> faults = new CopyOnWriteArrayList<>();
  private final Thread thread;
  private volatile boolean stopping;
  private volatile int finished;
  private volatile long readings;

  Station(int number, String broker, Path directory) {
    this.number = number;
    this.broker = broker;
    this.truth = directory.resolve("truth-" + number + ".jsonl");
    this.thread = new Thread(this::run, "bench-" + number);
  }

  static String wrench(int station) {
    return "TW-09" + (10 + station);
  }

  void start() {
    thread.start();
  }

  /** Waits for the end of the unit in hand. */
  void finish() throws InterruptedException {
    stopping = true;
    thread.join();
  }

  /** How many units are done. */
  int finished() {
    return finished;
  }

  /** How many tightenings and loosenings there really were. */
  long readings() {
    return readings;
  }

  List<String> faults() {
    return faults;
  }

  private void run() {
    try (MqttClient scanner =
        new MqttClient(broker, "scanner-" + number, new MemoryPersistence())) {
      scanner.connect();
      long next = System.nanoTime();
      while (!stopping) {
        unit(scanner);
        next = Math.max(next + Soak.JOB.toNanos(), System.nanoTime());
        TimeUnit.NANOSECONDS.sleep(next - System.nanoTime());
      }
      scanner.disconnect();
    } catch (MqttException | IOException e) {
      faults.add(name() + " stopped: " + e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void unit(MqttClient scanner) throws MqttException, IOException {
    scan(scanner, "ATR-%02d%06d".formatted(number, finished));
    scan(scanner, "seats-clean");
    int status =
        new CommandLine(new wrenchsim.Main())
            .setCaseInsensitiveEnumValuesAllowed(true)
            .execute(
                "shop",
                "--broker=" + broker,
                "--station=" + name(),
                "--wrench=serial=" + wrench(number) + ",max=100,event=clock",
                "--mistake-rate=under=0.02",
                "--mistake-rate=redeliver=0.02",
                "--seed=" + (1000L * finished + number),
                "--truth=" + truth);
    if (status != 0) {
      faults.add(name() + ": the simulator ended with " + status + " at unit " + finished);
      stopping = true;
    }
    if (Files.exists(truth)) {
      readings += turned();
    }
    scan(scanner, "wm:close");
    finished++;
  }

  private void scan(MqttClient scanner, String code) throws MqttException {
    String text = "{\"scan\":\"" + code + "\",\"operator\":\"badge-07\"}";
    scanner.publish("witnessmark/v1/" + name() + "/scan", text.getBytes(UTF_8), 1, false);
  }

  private long turned() throws IOException {
    try (Stream<String> lines = Files.lines(truth)) {
      long turned = lines.filter(l -> !l.contains("\"act\":\"redeliver\"")).count();
      Files.delete(truth);
      return turned;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private String name() {
    return "bench-" + number;
  }
}
