package witnessmark.torque;

/** Where a value lies beside a band. */
public enum Side {
  BELOW,
  INSIDE,
  ABOVE
}
