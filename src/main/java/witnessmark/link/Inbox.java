package witnessmark.link;

/** Where a link puts what it received. */
public interface Inbox {
  /**
   * Takes the delivery if there is room. Never blocks.
   *
   * @return false when full: the delivery was not taken and must not be acknowledged
   */
  boolean offer(Delivery delivery);

  /** Whether there is room enough that a link which went away should come back. */
  boolean hasRoom();
}
