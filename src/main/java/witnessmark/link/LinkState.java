package witnessmark.link;

/** How a link stands. */
public enum LinkState {
  /** It is trying to reach the other side. */
  CONNECTING,
  /** Messages flow. */
  UP,
  /** It is not up and will try again by itself; the detail says what is in the way. */
  WAITING,
  /** It was ended and stays so. */
  CLOSED
}
