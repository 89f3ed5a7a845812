package wrenchsim.shop;

/** How an operator's shift ended. */
public enum Outcome {
  /** The station has nothing more to do. */
  FINISHED,
  /** Nothing was heard for too long. */
  UNFINISHED
}
