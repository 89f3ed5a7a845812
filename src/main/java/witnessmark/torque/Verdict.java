package witnessmark.torque;

import java.util.Locale;

/**
 * What a reading says about its band, beside the open standard's evaluation word (OPC 40001-101
 * ResultEvaluationEnum: Undefined, OK, NotOK, NotDecidable).
 */
public enum Verdict {
  IN_BAND("OK"),
  UNDER_TORQUE("NotOK"),
  OVER_TORQUE("NotOK"),
  ANGLE_LOW("NotOK"),
  ANGLE_HIGH("NotOK"),
  /** Inside the guard band: measurement uncertainty leaves it open. */
  UNDECIDED("NotDecidable");

  private final String evaluation;

  Verdict(String evaluation) {
    this.evaluation = evaluation;
  }

  /** The word in messages and records, e.g. {@code under-torque}. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Verdict of(String code) {
    return valueOf(code.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  /** The evaluation word of OPC 40001-101. */
  public String evaluation() {
    return evaluation;
  }
}
