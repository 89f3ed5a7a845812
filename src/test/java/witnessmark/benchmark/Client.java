package witnessmark.benchmark;

import java.util.function.Consumer;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A client of the broker with a session that outlives its connection; everything at QoS 1. */
final class Client implements AutoCloseable {
  static final String TORQUE = "witnessmark/v1/+/torque";
  static final String READINGS = "witnessmark/v1/" + Work.STATION + "/torque";

  private final MqttAsyncClient client;

  Client(String url, String id) {
    try {
      client = new MqttAsyncClient(url, id, new MemoryPersistence());
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Leaves a session at the broker that collects readings for a subject yet to come. */
  static void collect(String url, String id) {
    try (Client client = new Client(url, id)) {
      client.connect();
      client.subscribe(TORQUE);
    }
  }

  void manualAcks() {
    client.setManualAcks(true);
  }

  void onMessage(Consumer<MqttMessage> each) {
    client.setCallback(
        new MqttCallback() {
          @Override
          public void connectionLost(Throwable cause) {
            throw new IllegalStateException(cause);
          }

          @Override
          public void messageArrived(String topic, MqttMessage message) {
            each.accept(message);
          }

          @Override
          public void deliveryComplete(IMqttDeliveryToken token) {
            // nobody waits for it
          }
        });
  }

  void connect() {
    try {
      MqttConnectOptions options = new MqttConnectOptions();
      options.setCleanSession(false);
      options.setMaxInflight(1000);
      options.setSocketFactory(new Sockets());
      client.connect(options).waitForCompletion(20_000);
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  void subscribe(String filter) {
    try {
      client.subscribe(filter, 1).waitForCompletion(20_000);
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Hands the message to the library and does not wait for the broker. */
  void publish(String topic, byte[] payload) throws MqttException {
    client.publish(topic, payload, 1, false);
  }

  void acknowledge(MqttMessage message) throws MqttException {
    client.messageArrivedComplete(message.getId(), 1);
  }

  @Override
  public void close() {
    try {
      client.disconnect(1000).waitForCompletion(20_000);
      client.close();
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }
}
