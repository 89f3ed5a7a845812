package witnessmark.trial.faults;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A wrench's gateway: publishes its numbered readings, with QoS 1 until the broker has them. */
final class Gateway implements Hand {
  private static final int TRIES = 400;

  private final String url;
  private final String wrench;
  private final int qos;
  private MqttClient client;
  private String station = "bench-1";
  private long sent;

  Gateway(String url, String wrench, int qos) {
    this.url = url;
    this.wrench = wrench;
    this.qos = qos;
  }

  @Override
  public String wrench() {
    return wrench;
  }

  @Override
  public boolean keeps() {
    return qos > 0;
  }

  @Override
  public long sent() {
    return sent;
  }

  @Override
  public void send(int count) throws InterruptedException {
    for (int i = 0; i < count; i++) {
      give(reading(wrench, sent + 1));
      sent++;
    }
  }

  /** A reading of a job at hand, its torque in N.m. */
  void pull(String torque) throws InterruptedException {
    give(
        "{\"wrench\":\"%s\",\"event\":%d,\"torque\":\"%s\",\"unit\":\"N.m\",\"angle\":\"40\"}"
            .formatted(wrench, sent + 1, torque)
            .getBytes(UTF_8));
    sent++;
  }

  /** It stands at another station than that of the job. */
  Gateway at(String other) {
    station = other;
    return this;
  }

  static byte[] reading(String wrench, long number) {
    return "{\"wrench\":\"%s\",\"event\":%d,\"torque\":\"%d.5\",\"unit\":\"N.m\"}"
        .formatted(wrench, number, 20 + number % 60)
        .getBytes(UTF_8);
  }

  /** What was not taken is given again, as a sender with memory does. */
  private void give(byte[] reading) throws InterruptedException {
    for (int i = 0; i < TRIES; i++) {
      try {
        connected().publish("witnessmark/v1/" + station + "/torque", reading, qos, false);
        return;
      } catch (MqttException e) {
        drop();
        TimeUnit.MILLISECONDS.sleep(50);
      }
    }
    throw new IllegalStateException("no broker at " + url);
  }

  private MqttClient connected() throws MqttException {
    if (client == null) {
      MqttClient fresh = new MqttClient(url, "gateway-" + wrench, new MemoryPersistence());
      MqttConnectOptions options = new MqttConnectOptions();
      options.setConnectionTimeout(2);
      options.setMaxInflight(1000);
      fresh.setTimeToWait(5000);
      fresh.connect(options);
      client = fresh;
    }
    return client;
  }

  private void drop() {
    try {
      if (client != null) {
        client.disconnectForcibly(0, 1);
        client.close();
      }
    } catch (MqttException e) {
      // it is of no more use either way
    }
    client = null;
  }

  @Override
  public void close() {
    drop();
  }
}
