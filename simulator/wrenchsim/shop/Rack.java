package wrenchsim.shop;

import java.util.List;
import java.util.Optional;
import wrenchsim.wire.Expected;

/**
 * The wrenches within reach, in order of preference.
 *
 * @param tools at least one
 */
public record Rack(List<Tool> tools) {
  public Rack {
    tools = List.copyOf(tools);
    if (tools.isEmpty()) {
      throw new IllegalArgumentException("a rack needs at least one wrench");
    }
  }

  /** The first wrench that is allowed on the fastener and whose range holds its band. */
  Optional<Tool> fit(Expected due) {
    return tools.stream()
        .filter(
            t -> due.wrenches().isEmpty() || due.wrenches().contains(t.wrench().spec().serial()))
        .filter(t -> t.wrench().spec().gauge().holds(due.lowNm(), due.highNm()))
        .findFirst();
  }
}
