package witnessmark.fuzz;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/** Good samples, and the inputs whose answers were of a kind not seen before. */
final class Corpus {
  private static final int KEPT = 500;
  private static final int LONGEST_KEPT = 8 << 10;

  private final List<byte[]> samples;
  private final List<byte[]> kept = new ArrayList<>();
  private final Set<String> kinds = new HashSet<>();
  private final Random random;
  private final int longest;

  Corpus(List<byte[]> samples, Random random) {
    this.samples = samples;
    this.random = random;
    this.longest =
        Math.max(LONGEST_KEPT, 2 * samples.stream().mapToInt(s -> s.length).max().orElseThrow());
  }

  byte[] any() {
    return kept.isEmpty() || random.nextBoolean()
        ? samples.get(random.nextInt(samples.size()))
        : kept.get(random.nextInt(kept.size()));
  }

  void told(byte[] input, String answer) {
    if (kinds.size() < 20_000 && kinds.add(kind(answer)) && input.length <= longest) {
      if (kept.size() < KEPT) {
        kept.add(input);
      } else {
        kept.set(random.nextInt(KEPT), input);
      }
    }
  }

  int kinds() {
    return kinds.size();
  }

  /** The answer without what it quotes and counts. */
  private static String kind(String answer) {
    StringBuilder kind = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < answer.length() && kind.length() < 160; i++) {
      char c = answer.charAt(i);
      quoted ^= c == '"';
      if (!quoted && (c < '0' || c > '9')) {
        kind.append(c);
      }
    }
    return kind.toString();
  }
}
