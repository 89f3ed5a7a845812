package witnessmark.link;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** An inbox of bounded size that a test empties by hand. */
public final class Tray implements Inbox {
  private final int capacity;
  private final Deque<Delivery> waiting = new ArrayDeque<>();
  private final List<String> acknowledged = new ArrayList<>();
  private int refused;

  public Tray(int capacity) {
    this.capacity = capacity;
  }

  @Override
  public synchronized boolean offer(Delivery delivery) {
    if (waiting.size() >= capacity) {
      refused++;
      return false;
    }
    waiting.add(delivery);
    return true;
  }

  @Override
  public synchronized boolean hasRoom() {
    return waiting.size() <= capacity / 2;
  }

  public synchronized int size() {
    return waiting.size();
  }

  public synchronized int refused() {
    return refused;
  }

  /** Takes out all that waits, without acknowledging it. */
  public synchronized List<Delivery> take() {
    List<Delivery> all = List.copyOf(waiting);
    waiting.clear();
    return all;
  }

  /** Takes out all that waits and acknowledges it; returns the texts of all ever acknowledged. */
  public synchronized List<String> acknowledgeAll() {
    for (Delivery delivery : take()) {
      acknowledged.add(text(delivery));
      delivery.acknowledge().run();
    }
    return List.copyOf(acknowledged);
  }

  public static String text(Delivery delivery) {
    return new String(delivery.bytes(), UTF_8);
  }
}
