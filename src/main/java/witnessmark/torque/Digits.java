package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A decimal number kept digit for digit as it was written, beside its exact value.
 *
 * <p>At most 24 digits before and 24 after the point, and an exponent of at most two digits, so
 * that no written number can make arithmetic expensive.
 */
public final class Digits {
  private static final int MOST = 24;
  private static final int MOST_OF_EXPONENT = 2;

  private final String text;

  /** Kept, since one reading may be compared with the bands of hundreds of fasteners. */
  private final BigDecimal value;

  /**
   * @throws IllegalArgumentException when the text is not a decimal number of this form
   */
  public Digits(String text) {
    this.text = Objects.requireNonNull(text, "text");
    if (!formed(text)) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1");
    }
    this.value = new BigDecimal(text);
  }

  /**
   * Whether the text is {@code -?[0-9]{1,24}(\.[0-9]{1,24})?([eE][+-]?[0-9]{1,2})?}; by hand, since
   * every number of every entry that is read comes through here.
   */
  private static boolean formed(String text) {
    int at = text.startsWith("-") ? 1 : 0;
    int end = digits(text, at, MOST);
    if (end < text.length() && end > at && text.charAt(end) == '.') {
      at = end + 1;
      end = digits(text, at, MOST);
    }
    if (end < text.length() && end > at && (text.charAt(end) | ' ') == 'e') {
      at = end + 1;
      at += at < text.length() && "+-".indexOf(text.charAt(at)) >= 0 ? 1 : 0;
      end = digits(text, at, MOST_OF_EXPONENT);
    }
    return end == text.length() && end > at;
  }

  /** Where the digits from a place on end, of which there may be so many. */
  private static int digits(String text, int from, int most) {
    int end = from;
    while (end < text.length()
        && end - from < most
        && text.charAt(end) >= '0'
        && text.charAt(end) <= '9') {
      end++;
    }
    return end;
  }

  /** The digits as sent, e.g. {@code 32.50}; compared and stored unchanged. */
  public String text() {
    return text;
  }

  /** The exact value. */
  public BigDecimal value() {
    return value;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Digits d && text.equals(d.text);
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }

  @Override
  public String toString() {
    return text;
  }
}
