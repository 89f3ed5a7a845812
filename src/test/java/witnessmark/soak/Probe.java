package witnessmark.soak;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import witnessmark.benchmark.Sockets;

/** Sends a reading to a station of its own, waits for its verdict, and so on, ten a second. */
final class Probe implements AutoCloseable {
  private static final Pattern EVENT = Pattern.compile("\"event\":([0-9]+)");
  private static final String STATION = "witnessmark/v1/probe/";

  private final MqttClient client;
  private final SynchronousQueue<Long> answers = new SynchronousQueue<>();
  private final Thread thread = new Thread(this::run, "probe");
  private Latencies latencies = new Latencies();
  private volatile boolean stopping;
  private volatile long sent;

  Probe(String broker) throws MqttException {
    client = new MqttClient(broker, "probe", new MemoryPersistence());
    MqttConnectOptions options = new MqttConnectOptions();
    options.setCleanSession(true);
    options.setSocketFactory(new Sockets());
    client.connect(options);
    client.subscribe(
        STATION + "verdict", 1, (topic, m) -> heard(new String(m.getPayload(), UTF_8)));
    thread.start();
  }

  private void heard(String verdict) throws InterruptedException {
    Matcher event = EVENT.matcher(verdict);
    if (event.find()) {
      answers.offer(Long.parseLong(event.group(1)), 1, TimeUnit.SECONDS);
    }
  }

  private void run() {
    try {
      while (!stopping) {
        long began = System.nanoTime();
        String text = "{\"wrench\":\"TW-0417\",\"event\":%d,\"torque\":\"33\",\"unit\":\"N.m\"}";
        byte[] payload = text.formatted(sent + 1).getBytes(UTF_8);
        sent++;
        client.publish(STATION + "torque", payload, 1, false);
        awaitAnswer(sent);
        took((System.nanoTime() - began) / 1e6);
        TimeUnit.MILLISECONDS.sleep(100);
      }
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void awaitAnswer(long event) throws InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    Long heard = 0L;
    while (heard == null || heard != event) {
      if (System.nanoTime() > deadline) {
        return; // counted as 30 s, which no trend forgives
      }
      heard = answers.poll(1, TimeUnit.SECONDS);
    }
  }

  private synchronized void took(double millis) {
    latencies.add(millis);
  }

  /** What was measured since the last look. */
  synchronized Latencies take() {
    Latencies taken = latencies;
    latencies = new Latencies();
    return taken;
  }

  long sent() {
    return sent;
  }

  void finish() throws InterruptedException {
    stopping = true;
    thread.join();
  }

  @Override
  public void close() throws MqttException {
    client.disconnect();
    client.close();
  }
}
