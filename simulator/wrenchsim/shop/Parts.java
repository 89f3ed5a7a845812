package wrenchsim.shop;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import wrenchsim.joint.Joint;
import wrenchsim.joint.JointSpec;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;

/** The joints of every unit that came by, made when a fastener is first touched. */
public final class Parts {
  private static final double SCATTER = 0.05;

  private final long seed;
  private final Optional<Double> hardness;
  private final Map<String, Double> hardnessOf;
  private final Map<String, Joint> joints = new HashMap<>();

  /**
   * Parts not touched yet.
   *
   * @param hardness degrees from snug to target of every joint; without it, the middle of the
   *     published angle window, so that the parts fit the procedure, or else that of a hard joint
   * @param hardnessOf degrees for single fasteners ({@code carrier-left/3}) or steps ({@code
   *     carrier-left})
   */
  public Parts(long seed, Optional<Double> hardness, Map<String, Double> hardnessOf) {
    this.seed = seed;
    this.hardness = hardness;
    this.hardnessOf = Map.copyOf(hardnessOf);
  }

  /** A fastener's joint, ready for the pass that is due there or on its like. */
  Joint joint(ExpectMessage heard, String fastener, Expected like) {
    String unit = heard.unit().or(heard::job).orElse("");
    JointSpec spec =
        new JointSpec(
            like.targetNm(), like.lowNm(), like.highNm(), degrees(fastener, like), SCATTER);
    Joint joint =
        joints.computeIfAbsent(
            unit + " " + fastener, name -> new Joint(spec, Chance.of(seed, "joint " + name)));
    joint.face(spec);
    return joint;
  }

  private double degrees(String fastener, Expected like) {
    String step = fastener.split("/", 2)[0];
    if (hardnessOf.containsKey(fastener)) {
      return hardnessOf.get(fastener);
    }
    if (hardnessOf.containsKey(step)) {
      return hardnessOf.get(step);
    }
    return hardness.or(like::angle).orElse(JointSpec.HARD);
  }
}
