package wrenchsim.shop;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wrenchsim.joint.Joint;
import wrenchsim.joint.JointSpec;
import wrenchsim.joint.JointState;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;

/** The joints of every unit that came by, made when a fastener is first touched. */
public final class Parts {
  private final long seed;
  private final JointKind usual;
  private final Map<String, JointKind> kinds;
  private final Map<String, Map<String, Joint>> units = new HashMap<>();

  /**
   * Parts not touched yet.
   *
   * @param usual the kind of every joint
   * @param kinds other kinds for single fasteners ({@code carrier-left/3}) or groups ({@code
   *     carrier-left})
   */
  public Parts(long seed, JointKind usual, Map<String, JointKind> kinds) {
    this.seed = seed;
    this.usual = usual;
    this.kinds = Map.copyOf(kinds);
  }

  /** The state of every joint of a unit that was touched, by fastener. */
  public Map<String, JointState> states(String unit) {
    Map<String, JointState> states = new TreeMap<>();
    units.getOrDefault(unit, Map.of()).forEach((name, joint) -> states.put(name, joint.state()));
    return Collections.unmodifiableMap(states);
  }

  /** Lets a unit go that nobody will touch any more. */
  public void ship(String unit) {
    units.remove(unit);
  }

  /** A fastener's joint, ready for the pass that is due there or on its like. */
  Joint joint(ExpectMessage heard, String fastener, Expected like) {
    String unit = unit(heard);
    JointSpec spec = kind(fastener).spec(like);
    Joint joint =
        units
            .computeIfAbsent(unit, u -> new HashMap<>())
            .computeIfAbsent(
                fastener, f -> new Joint(spec, Chance.of(seed, "joint " + unit + " " + f)));
    joint.face(spec);
    return joint;
  }

  /** What a unit is known by: its number, or else its job's. */
  static String unit(ExpectMessage heard) {
    return heard.unit().or(heard::job).orElse("");
  }

  private JointKind kind(String fastener) {
    return Optional.ofNullable(kinds.get(fastener))
        .or(() -> Optional.ofNullable(kinds.get(fastener.split("/", 2)[0])))
        .orElse(usual);
  }
}
