package witnessmark.procedure;

import java.util.List;

/** Words several things into part of a sentence. */
final class Sentence {
  private static final int SHOWN = 12;

  private Sentence() {}

  /** {@code a}, {@code a and b}, {@code a, b and c}; past twelve, how many more there are. */
  static String list(List<String> things) {
    if (things.size() > SHOWN) {
      return String.join(", ", things.subList(0, SHOWN))
          + " and "
          + (things.size() - SHOWN)
          + " more";
    }
    int last = things.size() - 1;
    return last < 1
        ? String.join("", things)
        : String.join(", ", things.subList(0, last)) + " and " + things.get(last);
  }

  /** {@code a -> b -> c}; of a long way, its beginning and end. */
  static String way(List<String> stops) {
    if (stops.size() <= SHOWN + 1) {
      return String.join(" -> ", stops);
    }
    int end = stops.size() - SHOWN / 2;
    return String.join(" -> ", stops.subList(0, SHOWN / 2))
        + " -> ("
        + (end - SHOWN / 2)
        + " more) -> "
        + String.join(" -> ", stops.subList(end, stops.size()));
  }
}
