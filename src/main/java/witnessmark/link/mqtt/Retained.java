package witnessmark.link.mqtt;

import java.util.Map;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttMessage;

/** Keeps what a broker retains of bridges' health, of a hundred of them at most. */
final class Retained implements MqttCallback {
  static final String TOPICS = "witnessmark/v1/+/health";

  private static final int MOST = 100;
  private final Map<String, byte[]> kept;

  /**
   * @param kept takes it, by topic
   */
  Retained(Map<String, byte[]> kept) {
    this.kept = kept;
  }

  @Override
  public void messageArrived(String topic, MqttMessage message) {
    boolean health = topic.startsWith("witnessmark/v1/") && topic.endsWith("/health");
    if (health && message.isRetained() && kept.size() < MOST) {
      kept.put(topic, message.getPayload());
    }
  }

  @Override
  public void connectionLost(Throwable cause) {
    // what has come by then is kept
  }

  @Override
  public void deliveryComplete(IMqttDeliveryToken token) {
    // nothing is published
  }
}
