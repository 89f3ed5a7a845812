package witnessmark.procedure;

import java.util.List;

/**
 * The order inside a group.
 *
 * @param kind strict and pattern name one next fastener; any lets every pending one be next
 * @param sequence indexes into the step's positions, each exactly once, in working order
 */
public record Order(Kind kind, List<Integer> sequence) {
  /** How the working order is given. */
  public enum Kind {
    STRICT,
    PATTERN,
    ANY
  }

  /**
   * @throws IllegalArgumentException when the sequence does not hold each index exactly once
   */
  public Order {
    sequence = List.copyOf(sequence);
    for (int i = 0; i < sequence.size(); i++) {
      if (!sequence.contains(i)) {
        throw new IllegalArgumentException("the order skips position " + (i + 1));
      }
    }
  }
}
