package witnessmark.wrench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Objection;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Tool;
import witnessmark.torque.Torque;

/** Whether a wrench can do a pass at all, whatever it will read. */
public final class Fitness {

  private Fitness() {}

  /**
   * What makes the wrench unfit for the pass, before any reading: what {@link #standing} finds, and
   * that its range does not hold the torque aimed at (the target, or the middle of the band) as it
   * is at the drive, and that it reports no angle where one is asked for.
   */
  public static List<Objection> of(Wrench wrench, Pass pass, Tool tool) {
    List<Objection> found = new ArrayList<>(standing(wrench, pass, tool));
    if (tool.lever().compare(wrench.low().newtonMetres(), pass.aim()) > 0
        || tool.lever().compare(wrench.high().newtonMetres(), pass.aim()) < 0) {
      found.add(Objection.OUTSIDE_WRENCH_RANGE);
    }
    if (pass.angle().isPresent() && !wrench.reportsAngle()) {
      found.add(Objection.ANGLE_MISSING);
    }
    return List.copyOf(found);
  }

  /** What makes the wrench unfit for the pass whatever it reads: kind, resolution, uncertainty. */
  public static List<Objection> standing(Wrench wrench, Pass pass, Tool tool) {
    List<Objection> found = new ArrayList<>();
    if (tool.kind().isPresent() && tool.kind().get() != wrench.kind()) {
      found.add(Objection.WRONG_KIND_OF_WRENCH);
    }
    if (wrench.resolution().filter(r -> tooCoarse(r, pass, tool)).isPresent()) {
      found.add(Objection.RESOLUTION_TOO_COARSE);
    }
    Optional<BigDecimal> guard = tool.acceptance().guard();
    if (guard.isPresent() && wrench.uncertainty().isEmpty()) {
      found.add(Objection.UNCERTAINTY_UNKNOWN);
    } else if (guard.isPresent() && nothingLeft(pass, share(guard.get(), wrench).orElseThrow())) {
      found.add(Objection.UNCERTAINTY_TOO_LARGE);
    }
    return List.copyOf(found);
  }

  /** The guard band as a share of the torque, r·U/T, where the wrench's uncertainty is known. */
  public static Optional<BigDecimal> share(BigDecimal factor, Wrench wrench) {
    return wrench.uncertainty().map(u -> u.value().multiply(factor).movePointLeft(2));
  }

  /** One step at the drive, as it is at the fastener, so often does not fit into the band. */
  private static boolean tooCoarse(Torque resolution, Pass pass, Tool tool) {
    BigDecimal width = pass.band().high().newtonMetres().subtract(pass.band().low().newtonMetres());
    BigDecimal steps = tool.stepsInBand();
    return tool.lever().compare(resolution.newtonMetres().multiply(steps), width) > 0;
  }

  /**
   * Whether no torque T is left with T − w and T + w both within the band, w being a share of T.
   */
  private static boolean nothingLeft(Pass pass, BigDecimal share) {
    BigDecimal least = pass.band().low().newtonMetres().multiply(BigDecimal.ONE.add(share));
    BigDecimal most = pass.band().high().newtonMetres().multiply(BigDecimal.ONE.subtract(share));
    return least.compareTo(most) > 0;
  }
}
