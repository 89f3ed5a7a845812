package witnessmark.procedure;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A bolt whose strength is known from its thread and property class; serves to notice a slip of
 * unit or digit, never as a source of torque values.
 *
 * @param diameter nominal, mm
 * @param stressArea mm²
 * @param proofStress stress under proof load, MPa
 */
record Bolt(double diameter, double stressArea, double proofStress) {
  private static final Pattern METRIC =
      Pattern.compile("M([0-9]{1,2}(?:\\.[0-9]{1,2})?) ?[x×] ?([0-9](?:\\.[0-9]{1,3})?)");
  private static final Pattern UNIFIED =
      Pattern.compile(
          "(?:([0-9])(?:[ -](?=[0-9]{1,2}/)|(?=-)))?(?:([0-9]{1,2})/([0-9]{1,2}))?-([0-9]{1,2})(?: UN[CFS]?)?");
  private static final double INCH = 25.4;

  /** Newtons per square millimetre in 1000 lbf/in²: 4 448.221 615 260 5 N over 645.16 mm². */
  private static final double KSI = 4448.2216152605 / 645.16;

  /** The bolt of that thread and class; empty where either is in no form that is known. */
  static Optional<Bolt> of(String thread, String propertyClass) {
    Matcher metric = METRIC.matcher(thread);
    if (metric.matches()) {
      return metric(
          Double.parseDouble(metric.group(1)), Double.parseDouble(metric.group(2)), propertyClass);
    }
    Matcher unified = UNIFIED.matcher(thread);
    return unified.matches() ? unified(unified, propertyClass) : Optional.empty();
  }

  /**
   * Stress area of ISO 898-1: π/4·((d2+d3)/2)², d2 = d − 0.649 519·P, d3 = d − 1.226 869·P. Proof
   * stresses of ISO 898-1: from memory.
   */
  private static Optional<Bolt> metric(double d, double pitch, String propertyClass) {
    double proof =
        switch (propertyClass) {
          case "8.8" -> d <= 16 ? 580 : 600;
          case "10.9" -> 830;
          case "12.9" -> 970;
          default -> 0;
        };
    if (proof == 0 || d < 1.6 || d > 39 || pitch < 0.2 || pitch > d / 3) {
      return Optional.empty();
    }
    double mean = d - (0.649519 + 1.226869) / 2 * pitch;
    return Optional.of(new Bolt(d, Math.PI / 4 * mean * mean, proof));
  }

  /**
   * Stress area of the unified threads: 0.7854·(D − 0.9743/n)² in square inches, n threads an inch.
   * Proof stresses of SAE J429 as quoted by a university course page from Shigley and Mischke.
   */
  private static Optional<Bolt> unified(Matcher thread, String propertyClass) {
    double whole = thread.group(1) == null ? 0 : Double.parseDouble(thread.group(1));
    double part =
        thread.group(2) == null
            ? 0
            : Double.parseDouble(thread.group(2)) / Double.parseDouble(thread.group(3));
    double d = whole + part;
    double n = Double.parseDouble(thread.group(4));
    double ksi =
        switch (propertyClass.toLowerCase(Locale.ROOT)) {
          case "grade 2" -> d <= 0.75 ? 55 : 0;
          case "grade 5" -> d <= 1 ? 85 : 74;
          case "grade 8" -> 120;
          default -> 0;
        };
    if (ksi == 0 || !(d >= 0.25 && d <= 1.5) || n < 4 || n > 56) {
      return Optional.empty();
    }
    double mean = d - 0.9743 / n;
    return Optional.of(new Bolt(d * INCH, 0.7854 * mean * mean * INCH * INCH, ksi * KSI));
  }

  /** Newtons. */
  double proofLoad() {
    return stressArea * proofStress;
  }

  /** Newton metres that reach the proof load at nut factor {@code k}: T = K·D·F. */
  double torqueAtProofLoad(double k) {
    return k * diameter / 1000 * proofLoad();
  }
}
