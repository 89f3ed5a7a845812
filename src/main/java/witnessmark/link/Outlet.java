package witnessmark.link;

/** Where the bridge tells the outside what it has on record. */
public interface Outlet {
  /**
   * Publishes a message that is delivered at least once, and waits for the broker within a bound.
   *
   * @param retained whether the broker keeps it for those who subscribe later
   * @return true once the broker has taken it; false when it has not or may not have: try again
   */
  boolean publish(String topic, byte[] payload, boolean retained);

  /** Whether a publish has a chance now. */
  boolean connected();
}
