package wrenchsim;

import java.io.IOException;
import java.util.Map;
import wrenchsim.mqtt.BrokerLink;
import wrenchsim.shop.Message;
import wrenchsim.shop.Wire;
import wrenchsim.wire.Topics;
import wrenchsim.wrench.Sender;

/** The real wires of a shop: each wrench speaks in its own way, a scanner through the broker. */
final class ShopWire implements Wire {
  private final BrokerLink link;
  private final Topics station;
  private final Map<String, Sender> senders;

  /**
   * Wires that are open.
   *
   * @param senders how each wrench speaks, by serial number
   */
  ShopWire(BrokerLink link, Topics station, Map<String, Sender> senders) {
    this.link = link;
    this.station = station;
    this.senders = Map.copyOf(senders);
  }

  @Override
  public void send(Message message) throws IOException {
    if (message instanceof Message.Scan) {
      link.publish(station.scan(), message.bytes());
    } else if (message instanceof Message.Torque torque) {
      Sender sender = senders.get(torque.wrench());
      if (torque.stored()) {
        sender.sendStored(torque.readings());
      } else {
        sender.send(torque.readings().get(0));
      }
    } else {
      throw new IllegalStateException("unknown message " + message);
    }
  }
}
