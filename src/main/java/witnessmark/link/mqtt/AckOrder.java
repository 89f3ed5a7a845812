package witnessmark.link.mqtt;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.IntConsumer;

/**
 * The acknowledgements one connection owes, sent in the order the messages came in, as MQTT 3.1.1
 * section 4.6 asks, whatever order they are given in.
 */
final class AckOrder {
  private final IntConsumer send;
  private final Deque<Owed> owed = new ArrayDeque<>();
  private boolean ended;

  /**
   * @param send puts the acknowledgement of a message id on the wire; must not block
   */
  AckOrder(IntConsumer send) {
    this.send = send;
  }

  /** Notes a message just received and returns what acknowledges it. */
  synchronized Runnable owe(int id) {
    Owed one = new Owed(id);
    owed.add(one);
    return () -> given(one);
  }

  /** Forgets the message just received: it was not taken and will not be acknowledged. */
  synchronized void disown() {
    owed.pollLast();
  }

  /** How many messages wait for their acknowledgement. */
  synchronized int open() {
    return owed.size();
  }

  /** The connection is over: whatever is acknowledged from now on goes nowhere. */
  synchronized void end() {
    ended = true;
    owed.clear();
  }

  private synchronized void given(Owed one) {
    one.given = true;
    while (!ended && !owed.isEmpty() && owed.getFirst().given) {
      send.accept(owed.removeFirst().id);
    }
  }

  private static final class Owed {
    private final int id;
    private boolean given;

    private Owed(int id) {
      this.id = id;
    }
  }
}
