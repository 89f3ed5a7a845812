package wrenchsim.shop;

import java.util.Objects;
import wrenchsim.wrench.Sender;
import wrenchsim.wrench.Wrench;

/**
 * A wrench with the way it speaks.
 *
 * @param wrench the wrench
 * @param sender its wire
 */
public record Tool(Wrench wrench, Sender sender) {
  public Tool {
    Objects.requireNonNull(wrench, "wrench");
    Objects.requireNonNull(sender, "sender");
  }
}
