package witnessmark.procedure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import witnessmark.torque.Torque;

/** Torques that the bolt could hardly have been meant to get. */
final class Slips {
  /**
   * Nut factors that bracket what is seen on steel bolts: common practice, no source. Handbooks
   * quote about 0.15 lubricated and 0.20 dry.
   */
  private static final double LOW_FRICTION = 0.10;

  private static final double HIGH_FRICTION = 0.30;

  /** A share of the proof load below which no bolt is usefully tightened; our own choice. */
  private static final double LEAST = 0.10;

  private Slips() {}

  static void find(TightenStep step, List<Finding> findings) {
    Optional<String> thread = step.joint().thread();
    Optional<String> propertyClass = step.joint().propertyClass();
    if (thread.isEmpty() || propertyClass.isEmpty()) {
      return;
    }
    Optional<Bolt> bolt = Bolt.of(thread.get(), propertyClass.get());
    String name = thread.get() + " " + propertyClass.get();
    if (bolt.isEmpty()) {
      findings.add(
          new Finding(
              step.id(),
              name
                  + " is in no form whose strength is known (M8x1.25 with 8.8, 10.9 or 12.9;"
                  + " 5/16-18 with grade 2, 5 or 8), so its torque was not checked for a slip of"
                  + " unit or digit"));
      return;
    }
    high(step, name, bolt.get(), findings);
    low(step, name, bolt.get(), findings);
  }

  private static void high(TightenStep step, String name, Bolt bolt, List<Finding> findings) {
    double most = bolt.torqueAtProofLoad(HIGH_FRICTION);
    step.passes().stream()
        .filter(p -> newtonMetres(p.band().high()) > most)
        .forEach(
            p ->
                findings.add(
                    new Finding(
                        step.id(),
                        p.band().high()
                            + " in pass \""
                            + p.name()
                            + "\" is "
                            + percent(newtonMetres(p.band().high()) / most)
                            + " of the torque that reaches proof load of "
                            + name
                            + " even at high friction (nut factor 0.30): are unit, digits, thread"
                            + " and class right?")));
  }

  /** Of the highest pass only: a snug pass is low on purpose. */
  private static void low(TightenStep step, String name, Bolt bolt, List<Finding> findings) {
    double whole = bolt.torqueAtProofLoad(LOW_FRICTION);
    Torque highest =
        step.passes().stream().map(Slips::aim).max(Comparator.naturalOrder()).orElseThrow();
    if (newtonMetres(highest) < LEAST * whole) {
      findings.add(
          new Finding(
              step.id(),
              highest
                  + " is "
                  + percent(newtonMetres(highest) / whole)
                  + " of the torque that reaches proof load of "
                  + name
                  + " at low friction (nut factor 0.10): is the unit right?"));
    }
  }

  private static Torque aim(Pass pass) {
    return pass.target().orElse(pass.band().high());
  }

  private static double newtonMetres(Torque torque) {
    return torque.newtonMetres().doubleValue();
  }

  private static String percent(double share) {
    return share < 0.01 ? "less than 1 %" : (long) Math.floor(share * 100) + " %";
  }
}
