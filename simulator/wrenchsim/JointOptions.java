package wrenchsim;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import wrenchsim.joint.Rehit;
import wrenchsim.shop.JointKind;
import wrenchsim.shop.Parts;

/** The options that say how the joints answer to torque. */
final class JointOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--hardness",
      paramLabel = "DEGREES",
      converter = Converters.OfHardness.class,
      description =
          "Degrees from snug to target of every joint, or hard (30) or soft (360); without it the "
              + "middle of the expected angle window, or else hard.")
  private Optional<Double> hardness;

  @Option(
      names = "--scatter",
      paramLabel = "R",
      defaultValue = "0.05",
      description =
          "The relative standard deviation of that angle, 0 to 0.3 (default: ${DEFAULT-VALUE}).")
  private double scatter;

  @Option(
      names = "--rehit",
      paramLabel = "MEAN:DEVIATION",
      defaultValue = "1.5:0.5",
      converter = Converters.OfRehit.class,
      description =
          "Degrees by which a tight joint turns when it is hit again (default: ${DEFAULT-VALUE}).")
  private Rehit rehit;

  @Option(
      names = "--joint",
      paramLabel = "PLACE=DEGREES[:SCATTER[:MEAN:DEVIATION]]",
      converter = {Converters.OfPlace.class, Converters.OfJoint.class},
      description = "The same for one fastener or step, e.g. carrier-left=soft; repeatable.")
  private Map<String, Converters.Said> joints = new LinkedHashMap<>();

  /** Parts of these kinds, not touched yet. */
  Parts parts(long seed) {
    try {
      JointKind usual = new JointKind(hardness, scatter, rehit);
      Map<String, JointKind> kinds = new LinkedHashMap<>();
      joints.forEach((place, said) -> kinds.put(place, said.kind(usual)));
      return new Parts(seed, usual, kinds);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
  }
}
