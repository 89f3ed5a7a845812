package witnessmark.entry;

import java.util.Locale;

/** An enumerated word of the log, written in lower case with hyphens. */
public interface Word {
  /** The enum constant's name. */
  String name();

  /** The word as written in entries and messages, e.g. {@code next-in-sequence}. */
  default String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
