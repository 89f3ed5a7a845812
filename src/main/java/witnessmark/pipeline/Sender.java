package witnessmark.pipeline;

import java.util.List;

/** Who sent a message, and what he is told of it. */
public interface Sender {
  /** Whether he keeps the message until he is told that it is on record, and sends it again. */
  boolean keeps();

  /** All of the message is on disk. */
  void recorded(List<Outcome> outcomes);

  /**
   * Nothing can be recorded now; the message is kept and waits. Told once or more, from any thread.
   */
  void waits();

  /** Nothing can be recorded now, and there was no room to keep the message. */
  void lost();
}
