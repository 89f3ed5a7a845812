package witnessmark.desk;

import java.util.List;

/** The beginning of a list, where a sentence has no room for all of it. */
public final class Few {
  private static final int SHOWN = 6;

  private Few() {}

  /** At most six of the names, and how many more there are. */
  public static String of(List<String> names) {
    return names.size() <= SHOWN
        ? String.join(", ", names)
        : String.join(", ", names.subList(0, SHOWN)) + " and " + (names.size() - SHOWN) + " more";
  }
}
