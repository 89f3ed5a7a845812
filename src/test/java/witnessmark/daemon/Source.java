package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import witnessmark.bench.Mosquitto;

/** Publishes events one after the other with QoS 1, a little apart, as far as allowed. */
final class Source implements AutoCloseable {
  private final MqttClient client;
  private final List<String> events;
  private final long paceMillis;
  private final Thread thread = new Thread(this::run, "source");
  private volatile int allowed;
  private volatile int sent;
  private volatile boolean closed;

  Source(Mosquitto broker, List<String> events, long paceMillis) throws MqttException {
    this.events = events;
    this.paceMillis = paceMillis;
    this.client = new MqttClient(broker.url(), "source", new MemoryPersistence());
    MqttConnectOptions options = new MqttConnectOptions();
    // publish returns before another thread of the client frees its place, which may take long
    options.setMaxInflight(events.size());
    client.connect(options);
    thread.start();
  }

  /** Lets the first {@code count} events go out. */
  void allow(int count) {
    allowed = count;
  }

  /** How many events the broker has. */
  int sent() {
    return sent;
  }

  private void run() {
    try {
      while (!closed && sent < events.size()) {
        if (sent < allowed) {
          byte[] payload = events.get(sent).getBytes(UTF_8);
          client.publish("witnessmark/v1/bench-1/torque", payload, 1, false);
          sent++;
        }
        TimeUnit.MILLISECONDS.sleep(paceMillis);
      }
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() throws MqttException {
    closed = true;
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    client.disconnect();
    client.close();
  }
}
