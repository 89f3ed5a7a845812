package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueUnit;

/** Torques that the bolt could hardly have been meant to get. */
final class Slips {
  /**
   * Nut factors that bracket what is seen on steel bolts: common practice, no source. Handbooks
   * quote about 0.15 lubricated and 0.20 dry.
   */
  static final double LOW_FRICTION = 0.10;

  static final double HIGH_FRICTION = 0.30;

  /**
   * The share of the proof load that general tables tighten to: U.S. Army TM 10-6640-238-13,
   * appendix G, as PublishedTorquesTest shows.
   */
  static final double USUAL = 0.75;

  /**
   * A share of the proof load below which no bolt is usefully tightened; our own choice, so that
   * pound-inches written for pound-feet are noticed in every cell of the army's table.
   */
  private static final double LEAST = 0.20;

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
              Doubt.BOLT_UNKNOWN,
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
                        Doubt.TORQUE_HIGH,
                        p.band().high()
                            + " in pass \""
                            + p.name()
                            + "\" is "
                            + percent(newtonMetres(p.band().high()) / most)
                            + " of the torque that reaches proof load of "
                            + name
                            + " even at high friction (nut factor 0.30): are unit, digits, thread"
                            + " and class right?"
                            + meant(p.band().high(), bolt))));
  }

  /** Which other unit, or a point in another place, would make sense of the number; or nothing. */
  private static String meant(Torque torque, Bolt bolt) {
    BigDecimal number = torque.digits().value();
    List<String> units = new ArrayList<>();
    for (TorqueUnit unit : TorqueUnit.values()) {
      if (unit != torque.unit()
          && sensible(number.multiply(unit.newtonMetres()).doubleValue(), bolt)) {
        units.add(unit.toString());
      }
    }
    boolean tooMany = sensible(newtonMetres(torque) / 10, bolt);
    boolean tooFew = sensible(newtonMetres(torque) * 10, bolt);
    String unit = units.isEmpty() ? "" : "in " + String.join(" or ", units);
    String digit = tooMany ? "with a digit less" : tooFew ? "with a digit more" : "";
    String both = unit + (unit.isEmpty() || digit.isEmpty() ? "" : ", or ") + digit;
    return both.isEmpty() ? "" : " The number would make sense " + both;
  }

  private static boolean sensible(double newtonMetres, Bolt bolt) {
    return newtonMetres >= USUAL * bolt.torqueAtProofLoad(LOW_FRICTION)
        && newtonMetres <= bolt.torqueAtProofLoad(HIGH_FRICTION);
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
              Doubt.TORQUE_LOW,
              highest
                  + " is "
                  + percent(newtonMetres(highest) / whole)
                  + " of the torque that reaches proof load of "
                  + name
                  + " at low friction (nut factor 0.10): is the unit right?"
                  + meant(highest, bolt)));
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
