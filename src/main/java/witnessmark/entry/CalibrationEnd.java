package witnessmark.entry;

/** Why a calibration is no longer in force before its due date. */
public enum CalibrationEnd implements Word {
  /** As many readings were taken as it is good for. */
  OPERATIONS_USED_UP,
  /** A check on the shop's tester was beyond the permissible deviation. */
  CHECK_FAILED,
  /** The laboratory left the wrench beyond the permissible deviation. */
  LEFT_OUT_OF_TOLERANCE,
  /** A person took it out of use, as after a drop or an overload. */
  TAKEN_OUT_OF_USE
}
