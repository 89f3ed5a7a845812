package wrenchsim.mqtt;

import java.util.List;
import wrenchsim.wire.LinkException;
import wrenchsim.wire.TorqueMessage;
import wrenchsim.wrench.Reading;
import wrenchsim.wrench.Sender;

/** A wrench that publishes its readings to one topic. */
public final class MqttSender implements Sender {
  private final BrokerLink broker;
  private final String topic;

  public MqttSender(BrokerLink broker, String topic) {
    this.broker = broker;
    this.topic = topic;
  }

  @Override
  public void send(Reading reading) throws LinkException {
    broker.publish(topic, TorqueMessage.encode(reading));
  }

  @Override
  public void sendStored(List<Reading> burst) throws LinkException {
    broker.publish(topic, TorqueMessage.encode(burst));
  }
}
