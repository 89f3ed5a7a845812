package witnessmark.entry;

/** Why a reading cannot be relied on to accept a fastener, though it is on record. */
public enum Objection implements Word {
  WRENCH_NOT_ENROLLED,
  /** It came by another way than those by which this wrench may report. */
  NOT_FROM_ITS_SOURCE,
  /** No calibration was in force at the moment of the event. */
  CALIBRATION_NOT_IN_FORCE,
  /** The reading lies outside the wrench's range. */
  OUTSIDE_WRENCH_RANGE,
  /** The step names other wrenches. */
  WRENCH_NOT_FOR_THIS_STEP,
  /** The step asks for an angle and the wrench sent none. */
  ANGLE_MISSING,
  /** The step asks for the other kind of wrench. */
  WRONG_KIND_OF_WRENCH,
  /** The wrench's resolution is too coarse for the width of the band. */
  RESOLUTION_TOO_COARSE,
  /** The step is guarded and the wrench's uncertainty is not known. */
  UNCERTAINTY_UNKNOWN,
  /** The wrench's guard bands leave nothing of the band. */
  UNCERTAINTY_TOO_LARGE
}
