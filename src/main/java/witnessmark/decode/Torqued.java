package witnessmark.decode;

import java.util.Objects;
import witnessmark.torque.TorqueEvent;

/**
 * A torque event that was received.
 *
 * @param event the event as read
 * @param raw the event's own text exactly as received: its JSON text, or its frame's text
 */
public record Torqued(TorqueEvent event, String raw) implements Decoded {
  public Torqued {
    Objects.requireNonNull(event, "event");
    Objects.requireNonNull(raw, "raw");
  }
}
