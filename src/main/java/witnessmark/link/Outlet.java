package witnessmark.link;

import java.util.List;

/** Where the bridge tells the outside what it has on record. */
public interface Outlet {
  /**
   * Publishes a message that is delivered at least once, and waits for the broker within a bound.
   *
   * @param retained whether the broker keeps it for those who subscribe later
   * @return true once the broker has taken it; false when it has not or may not have: try again
   */
  boolean publish(String topic, byte[] payload, boolean retained);

  /**
   * Publishes messages in their order, several under way at a time, each delivered at least once.
   *
   * @return how many of them, from the first on, the broker has taken; later ones may have been
   */
  int publish(List<Post> posts);

  /** Whether a publish has a chance now. */
  boolean connected();
}
