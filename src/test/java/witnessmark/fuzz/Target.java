package witnessmark.fuzz;

import java.util.List;

/**
 * A parser that meets bytes from outside, and what must hold of its answers.
 *
 * @param <A> what it answers
 */
public interface Target<A> {
  /** Its name on the page. */
  String name();

  /** Its part of all inputs, beside those of the others. */
  int share();

  /** Good inputs to begin with. */
  List<byte[]> samples();

  /** Pieces of its language, to be put anywhere. */
  List<String> words();

  /** What it may allocate for an input, in bytes. */
  Allowance allowance();

  /** Reads the input; whatever it throws is a fault. */
  A parse(byte[] input);

  /**
   * Checks what must hold of the answer and tells what kind it is: inputs that give a new kind are
   * kept to be changed further.
   *
   * @return {@code taken} or {@code refused} and, behind a blank, anything
   * @throws AssertionError where something does not hold
   */
  String judge(byte[] input, A answer);

  /** How long a made input may be, in bytes; samples may be longer. */
  default int longest() {
    return 16 << 10;
  }

  /** An input made from a good one in a way of its own; by default it has none. */
  default byte[] own(byte[] input, java.util.Random random) {
    return input;
  }

  /**
   * Bytes that a thread may allocate while it reads an input.
   *
   * @param constant for any input
   * @param each for each byte of the input
   */
  record Allowance(long constant, long each) {
    long of(byte[] input) {
      return constant + each * input.length;
    }
  }
}
