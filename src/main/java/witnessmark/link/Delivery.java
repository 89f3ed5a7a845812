package witnessmark.link;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Label;

/**
 * A message as it came off a wire, nothing read into it yet.
 *
 * @param link the name of the link it came over
 * @param channel where on the link: the MQTT topic, or the port's name
 * @param bytes exactly what arrived; owned by the delivery, not to be changed
 * @param at when the bridge took it
 * @param kept whether the sender keeps it until it is acknowledged, and sends it again
 * @param redelivered whether the sender says it may have sent it before
 * @param cut what is known of a message that was too large to be kept; then {@code bytes} is its
 *     head
 * @param acknowledge tells the sender that the message is safely on record; may be run from any
 *     thread, more than once, and after the link is gone: then the sender will send it again
 */
public record Delivery(
    String link,
    String channel,
    byte[] bytes,
    Instant at,
    boolean kept,
    boolean redelivered,
    Optional<Cut> cut,
    Runnable acknowledge) {
  public Delivery {
    Label.check("link", link);
    Objects.requireNonNull(channel, "channel");
    Objects.requireNonNull(bytes, "bytes");
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(cut, "cut");
    Objects.requireNonNull(acknowledge, "acknowledge");
  }
}
