package witnessmark.entry;

/** What a torque event changed. */
public enum Effect implements Word {
  /** This pass of the fastener is done. */
  CREDITED,
  /** The fastener stays, or is again, expected. */
  AGAIN,
  /** The fastener waits for a disposition. */
  NONCONFORMING,
  /** The fastener and what depends on it are pending again. */
  LOOSENED,
  /** A tight fastener was hit again and stands. */
  RECHECKED,
  /** A person must say which fastener it was. */
  ASKS,
  /** Recorded, changes nothing. */
  NONE
}
