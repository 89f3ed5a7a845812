package wrenchsim.shop;

/** How long hands take in the real world. */
public enum Pace {
  /** No waiting; only the simulated clock goes on. */
  FAST,
  /** A few seconds from one fastener to the next. */
  SHOP
}
