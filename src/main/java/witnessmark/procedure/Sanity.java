package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Looks for what a procedure allows but hardly means. */
public final class Sanity {
  /** Widest and narrowest usual tolerance, as shares of the torque: common practice, no source. */
  private static final BigDecimal WIDEST = new BigDecimal("0.30");

  private static final BigDecimal NARROWEST = new BigDecimal("0.01");
  private static final BigDecimal TWO = BigDecimal.valueOf(2);

  private Sanity() {}

  /**
   * The findings, by step in file order.
   *
   * @param procedure as read by {@link ProcedureFile}
   */
  public static List<Finding> findings(Procedure procedure) {
    List<Finding> findings = new ArrayList<>();
    Overlaps.find(Stages.of(procedure), findings);
    for (Step step : procedure.steps()) {
      if (step instanceof TightenStep tighten) {
        passes(tighten, findings);
        joint(tighten, findings);
        Slips.find(tighten, findings);
        Wear.find(tighten, findings);
      } else if (step instanceof AttestStep attest) {
        Wear.find(procedure, attest, findings);
      }
    }
    List<String> ids = procedure.steps().stream().map(Step::id).toList();
    findings.sort(Comparator.comparingInt(f -> ids.indexOf(f.step())));
    return List.copyOf(findings);
  }

  private static void passes(TightenStep step, List<Finding> findings) {
    Pass before = null;
    for (Pass pass : step.passes()) {
      if (before != null && pass.aim().compareTo(before.aim()) < 0) {
        findings.add(
            new Finding(
                step.id(),
                Doubt.PASSES_DESCEND,
                "pass \""
                    + pass.name()
                    + "\" ("
                    + pass.band()
                    + ") aims lower than pass \""
                    + before.name()
                    + "\" before it ("
                    + before.band()
                    + "): are the passes in order?"));
      }
      width(step, pass, findings);
      before = pass;
    }
  }

  private static void width(TightenStep step, Pass pass, List<Finding> findings) {
    BigDecimal width = pass.band().high().newtonMetres().subtract(pass.band().low().newtonMetres());
    BigDecimal aim = pass.aim();
    if (width.compareTo(aim.multiply(WIDEST).multiply(TWO)) > 0) {
      findings.add(
          new Finding(
              step.id(),
              Doubt.BAND_WIDE,
              "pass \""
                  + pass.name()
                  + "\" allows "
                  + pass.band()
                  + ", wider than ±30 %: is that meant?"));
    }
    if (width.compareTo(aim.multiply(NARROWEST).multiply(TWO)) < 0) {
      findings.add(
          new Finding(
              step.id(),
              Doubt.BAND_NARROW,
              "pass \""
                  + pass.name()
                  + "\" allows "
                  + pass.band()
                  + ", narrower than ±1 %, which hardly any wrench can show"));
    }
  }

  private static void joint(TightenStep step, List<Finding> findings) {
    boolean known = step.joint().thread().isPresent() && step.joint().propertyClass().isPresent();
    if (step.criticality() == Criticality.DANGER && !known) {
      findings.add(
          new Finding(
              step.id(),
              Doubt.BOLT_NOT_TOLD,
              "criticality is danger, but thread and property-class are not both given, so that"
                  + " the torque cannot be checked for a slip of unit or digit"));
    }
  }
}
