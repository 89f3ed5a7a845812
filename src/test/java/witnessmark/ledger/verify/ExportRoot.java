package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The root of a log recomputed from what {@code ledger export --jsonl} wrote, as anyone outside
 * would: the recursive definition of RFC 6962 section 2.1, word for word, and no code of ours.
 */
public final class ExportRoot {
  private static final Pattern LINE =
      Pattern.compile("\\{\"entry\":(0|[1-9][0-9]*),\"leaf\":\"([A-Za-z0-9+/]*={0,2})\"}");

  private ExportRoot() {}

  /**
   * The root over the lines' leaves.
   *
   * @throws IllegalArgumentException when a line has another form or its number is not the next
   */
  public static byte[] of(List<String> lines) {
    List<byte[]> leaves = new ArrayList<>();
    for (String line : lines) {
      Matcher matcher = LINE.matcher(line);
      if (!matcher.matches() || Long.parseLong(matcher.group(1)) != leaves.size()) {
        throw new IllegalArgumentException(
            "expected {\"entry\":" + leaves.size() + ",\"leaf\":\"base64\"}, found " + line);
      }
      leaves.add(Base64.getDecoder().decode(matcher.group(2)));
    }
    return mth(leaves);
  }

  /** MTH(D[n]) of RFC 6962 section 2.1. */
  public static byte[] mth(List<byte[]> d) {
    int n = d.size();
    if (n == 0) {
      return Sha.of();
    }
    if (n == 1) {
      return Sha.of(new byte[] {0}, d.get(0));
    }
    // "let k be the largest power of two smaller than n"
    int k = Integer.highestOneBit(n - 1);
    return Sha.of(new byte[] {1}, mth(d.subList(0, k)), mth(d.subList(k, n)));
  }
}
