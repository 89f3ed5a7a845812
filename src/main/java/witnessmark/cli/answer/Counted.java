package witnessmark.cli.answer;

/** A number with its noun. */
public final class Counted {
  private Counted() {}

  /** {@code 1 entry}, {@code 2 entries}. */
  public static String entries(long count) {
    return count + (count == 1 ? " entry" : " entries");
  }
}
