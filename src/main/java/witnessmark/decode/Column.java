package witnessmark.decode;

import java.util.Optional;

/**
 * What one column of a frame holds: a field, a text that must stand there, or (neither) anything.
 *
 * @param field the field it gives
 * @param literal the text that must stand there
 */
public record Column(Optional<EventField> field, Optional<String> literal) {
  /** Reads a field's name, {@code -}, or a text in single quotes; empty when it is none. */
  static Optional<Column> of(String text) {
    if (text.equals("-")) {
      return Optional.of(new Column(Optional.empty(), Optional.empty()));
    }
    if (text.length() >= 3 && text.startsWith("'") && text.endsWith("'")) {
      String literal = text.substring(1, text.length() - 1);
      return Optional.of(new Column(Optional.empty(), Optional.of(literal)));
    }
    return EventField.of(text).map(f -> new Column(Optional.of(f), Optional.empty()));
  }
}
