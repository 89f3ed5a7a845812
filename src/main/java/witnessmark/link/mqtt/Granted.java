package witnessmark.link.mqtt;

import java.util.List;
import java.util.Optional;

/** What the broker granted of the subscriptions that were asked for. */
final class Granted {
  private static final int REFUSED = 0x80; // MQTT 3.1.1, section 3.9.3

  private Granted() {}

  /** What is wrong with the grants, or nothing when every filter has QoS 1. */
  static Optional<String> fault(List<String> filters, int[] granted) {
    for (int i = 0; i < filters.size(); i++) {
      int qos = i < granted.length ? granted[i] : REFUSED;
      if (qos == REFUSED) {
        return Optional.of(
            "the broker refused the subscription to \""
                + filters.get(i)
                + "\"; check what its access list allows this user");
      }
      if (qos != 1) {
        return Optional.of(
            "the broker grants \""
                + filters.get(i)
                + "\" only QoS "
                + qos
                + ", under which messages get lost; raise its limit to QoS 1");
      }
    }
    return Optional.empty();
  }
}
