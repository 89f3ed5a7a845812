package witnessmark.daemon;

import witnessmark.torque.Visible;

/**
 * A topic as it may be put on record and before people: anybody at the broker can name one of 65
 * 535 bytes, with characters that move a terminal's cursor or turn the reading direction round.
 */
final class ShownTopic {
  private static final int LONGEST = 256;

  private ShownTopic() {}

  /** The topic, hidden characters as question marks, and what is too long cut with its length. */
  static String of(String topic) {
    StringBuilder shown = new StringBuilder();
    topic
        .codePoints()
        .limit(LONGEST)
        .forEach(c -> shown.appendCodePoint(Visible.hidden(c) ? '?' : c));
    int length = topic.codePointCount(0, topic.length());
    return length > LONGEST ? shown + "… (" + length + " characters)" : shown.toString();
  }
}
