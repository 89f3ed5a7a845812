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
    return tools.stream().filter(t -> fits(t, due)).findFirst();
  }

  /** The wrenches that must not be used there but can reach the torque. */
  List<Tool> misfits(Expected due) {
    return tools.stream()
        .filter(t -> !fits(t, due) && t.wrench().spec().gauge().reaches(due.highNm()))
        .toList();
  }

  /** The first wrench that keeps readings nobody has heard of. */
  Optional<Tool> away() {
    return tools.stream().filter(t -> t.radio().isAway()).findFirst();
  }

  private static boolean fits(Tool tool, Expected due) {
    return (due.wrenches().isEmpty() || due.wrenches().contains(tool.serial()))
        && tool.wrench().spec().gauge().holds(due.lowNm(), due.highNm());
  }
}
