package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * A decimal number kept digit for digit as it was written, beside its exact value.
 *
 * <p>At most 24 digits before and 24 after the point, and an exponent of at most two digits, so
 * that no written number can make arithmetic expensive.
 */
public final class Digits {
  private static final Pattern FORM =
      Pattern.compile("-?[0-9]{1,24}(\\.[0-9]{1,24})?([eE][+-]?[0-9]{1,2})?");

  private final String text;

  /** Kept, since one reading may be compared with the bands of hundreds of fasteners. */
  private final BigDecimal value;

  /**
   * @throws IllegalArgumentException when the text is not a decimal number of this form
   */
  public Digits(String text) {
    this.text = Objects.requireNonNull(text, "text");
    if (!FORM.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1");
    }
    this.value = new BigDecimal(text);
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
