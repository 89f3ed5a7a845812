package witnessmark.link;

/** Where a link puts what it received. */
public interface Inbox {
  /**
   * Takes the delivery, waiting at most a second for room: the link hears nothing else meanwhile.
   *
   * @return false when full and the sender keeps the delivery: it was not taken and must not be
   *     acknowledged
   */
  boolean offer(Delivery delivery);

  /** Whether there is room enough that a link which went away should come back. */
  boolean hasRoom();
}
