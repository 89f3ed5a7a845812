package witnessmark.procedure;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a finding is about. */
public enum Doubt {
  /** Groups that may be open at the same time take one torque. */
  BANDS_OVERLAP,
  /** A later pass aims lower. */
  PASSES_DESCEND,
  BAND_WIDE,
  BAND_NARROW,
  /** A dangerous joint whose thread and class are not given. */
  BOLT_NOT_TOLD,
  /** Thread and class are given in no form that is known. */
  BOLT_UNKNOWN,
  /** More than the bolt could be meant to get. */
  TORQUE_HIGH,
  /** Less than the bolt could be meant to get. */
  TORQUE_LOW,
  /** A dangerous fastener may be pulled without end. */
  NO_TRIES,
  /** A confirmation to be renewed that nothing waits for. */
  NEVER_RENEWED,
  /** A wrench that is enrolled cannot do a pass that names it, or none can. */
  WRENCH_UNFIT;

  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The doubt of that code. */
  public static Optional<Doubt> of(String code) {
    return Stream.of(values()).filter(d -> d.code().equals(code)).findFirst();
  }
}
