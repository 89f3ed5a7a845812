package witnessmark.recall;

import java.util.Locale;

/** What a wrench's error may have done to a joint; the worst first. */
public enum Outlook {
  /** Out of its band at the error as found, and also had the error grown evenly. */
  OUT("out of band at the error as found, and had it grown evenly"),
  /** Out of its band at the error as found, in it had the error grown evenly in one way or both. */
  OUT_IF_WRONG_FROM_THE_START(
      "out of band at the error as found, not in every case had it grown evenly"),
  /** In its band at the error as found, out of it at a smaller one. */
  OUT_AT_A_SMALLER_ERROR("in band at the error as found, out of it at a smaller one"),
  /** In its band whatever the error up to the one as found. */
  IN_WHATEVER_THE_ERROR("in band whatever the error up to the one as found");

  private final String words;

  Outlook(String words) {
    this.words = words;
  }

  /** What it means, for people. */
  public String words() {
    return words;
  }

  /** e.g. {@code in-whatever-the-error}. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether the joint is out of its band by some error up to the one as found. */
  public boolean isOut() {
    return this != IN_WHATEVER_THE_ERROR;
  }
}
