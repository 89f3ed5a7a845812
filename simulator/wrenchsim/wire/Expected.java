package wrenchsim.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wrenchsim.wrench.Unit;

/**
 * One pass of one fastener that may be done now, torque in N·m.
 *
 * @param fastener the position, e.g. {@code carrier-left/3}
 * @param pass the pass, e.g. {@code final}
 * @param targetNm what to aim at: the published target, or the middle of the band without one
 * @param lowNm the lowest acceptable torque, N·m
 * @param highNm the highest acceptable torque, N·m
 * @param angle the middle of the angle window in degrees, where there is one
 * @param wrenches the only wrenches allowed; empty when any is
 */
public record Expected(
    String fastener,
    String pass,
    double targetNm,
    double lowNm,
    double highNm,
    Optional<Double> angle,
    List<String> wrenches) {

  public Expected {
    wrenches = List.copyOf(wrenches);
    if (!(lowNm > 0 && lowNm <= targetNm && targetNm <= highNm)) {
      throw new IllegalArgumentException(
          "%s needs 0 < low <= target <= high in N.m, but has low %s, target %s, high %s"
              .formatted(fastener, lowNm, targetNm, highNm));
    }
  }

  /** The group it belongs to: what comes before the stroke in its name. */
  public String group() {
    return fastener.split("/", 2)[0];
  }

  /** Whether an element of {@code expect} is about tightening; other steps have no band. */
  static boolean isTightening(JsonNode element) {
    return element.hasNonNull("fastener") && element.hasNonNull("pass");
  }

  static Expected read(JsonNode element) throws MalformedMessage {
    String fastener = JsonText.required(element, "fastener", "an expected fastener");
    String what = "the expected fastener " + fastener;
    String symbol = JsonText.required(element, "unit", what);
    Unit unit =
        Unit.of(symbol)
            .orElseThrow(
                () ->
                    new MalformedMessage(
                        "%s has the unit '%s', but the units are %s"
                            .formatted(what, symbol, Unit.allowed())));
    BigDecimal low = limit(element, "low", what);
    BigDecimal high = limit(element, "high", what);
    BigDecimal target =
        JsonText.decimal(element, "target", what)
            .orElse(low.add(high).divide(BigDecimal.valueOf(2)));
    List<String> wrenches = new ArrayList<>();
    element.path("wrenches").forEach(w -> wrenches.add(w.asText()));
    try {
      return new Expected(
          fastener,
          JsonText.required(element, "pass", what),
          unit.toNm(target),
          unit.toNm(low),
          unit.toNm(high),
          middleAngle(element, what),
          wrenches);
    } catch (IllegalArgumentException e) {
      throw new MalformedMessage(e.getMessage());
    }
  }

  private static BigDecimal limit(JsonNode element, String field, String what)
      throws MalformedMessage {
    return JsonText.decimal(element, field, what)
        .orElseThrow(() -> new MalformedMessage(what + " has no field '" + field + "'"));
  }

  private static Optional<Double> middleAngle(JsonNode element, String what)
      throws MalformedMessage {
    Optional<BigDecimal> low = JsonText.decimal(element, "anglelow", what);
    Optional<BigDecimal> high = JsonText.decimal(element, "anglehigh", what);
    return low.isPresent() && high.isPresent()
        ? Optional.of(low.get().add(high.get()).doubleValue() / 2)
        : Optional.empty();
  }
}
