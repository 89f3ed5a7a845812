package wrenchsim.wire;

import java.util.Objects;
import java.util.Optional;

/** One line with which the bridge answers on the serial line. */
public sealed interface Answer {

  /** The frame of this number is on record; {@code word} is its verdict, repeat or unjudged. */
  record Taken(String wrench, long number, String word) implements Answer {
    public Taken {
      Objects.requireNonNull(wrench, "wrench");
      Objects.requireNonNull(word, "word");
    }
  }

  /** A frame could not be read. */
  record Refused() implements Answer {}

  /** The answer written in a line without its end, or empty for anything else. */
  static Optional<Answer> read(String line) {
    if (line.equals("N|refused")) {
      return Optional.of(new Refused());
    }
    String[] fields = line.split("\\|", -1);
    if (fields.length != 4 || !fields[0].equals("A") || !fields[2].matches("[0-9]{1,18}")) {
      return Optional.empty();
    }
    return Optional.of(new Taken(fields[1], Long.parseLong(fields[2]), fields[3]));
  }
}
