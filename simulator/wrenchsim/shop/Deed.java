package wrenchsim.shop;

import java.util.List;
import wrenchsim.truth.Happening;
import wrenchsim.wrench.Reading;

/**
 * One thing a person did at the bench, and what it sends to the bridge.
 *
 * @param truth what really happened; empty when a wrench only came back into range
 * @param messages what goes out, in this order; empty while the wrench is out of range
 * @param awaited the readings that are sent for the first time, so that a verdict is due on each
 */
public record Deed(List<Happening> truth, List<Message> messages, List<Reading> awaited) {
  public Deed {
    truth = List.copyOf(truth);
    messages = List.copyOf(messages);
    awaited = List.copyOf(awaited);
  }
}
