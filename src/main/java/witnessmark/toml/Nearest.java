package witnessmark.toml;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Guesses which allowed word was meant. */
public final class Nearest {
  private static final int LISTED = 30;

  private Nearest() {}

  /** The allowed word that was meant, where one is near enough. */
  public static Optional<String> of(String word, Collection<String> allowed) {
    return allowed.stream()
        .min(Comparator.comparingInt((String a) -> distance(word, a)).thenComparing(a -> a))
        .filter(a -> distance(word, a) <= Math.max(1, Math.min(word.length(), a.length()) / 2));
  }

  /** {@code did you mean "x"?} for a near word, else all allowed words. */
  public static String hint(String word, Collection<String> allowed) {
    return of(word, allowed)
        .map(a -> "did you mean \"" + a + "\"?")
        .orElseGet(() -> "allowed are " + listed(new TreeSet<>(allowed)));
  }

  private static String listed(TreeSet<String> allowed) {
    String first = allowed.stream().limit(LISTED).collect(Collectors.joining(", "));
    int more = allowed.size() - LISTED;
    return more > 0 ? first + " and " + more + " more" : first;
  }

  /** Levenshtein distance of the words' first 64 characters. */
  static int distance(String left, String right) {
    String a = left.length() > 64 ? left.substring(0, 64) : left;
    String b = right.length() > 64 ? right.substring(0, 64) : right;
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int above = row[j];
        int swap = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(swap, 1 + Math.min(above, row[j - 1]));
        diagonal = above;
      }
    }
    return row[b.length()];
  }
}
