package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * A decimal number kept digit for digit as it was written, beside its exact value.
 *
 * <p>At most 24 digits before and 24 after the point, and an exponent of at most two digits, so
 * that no written number can make arithmetic expensive.
 *
 * @param text the digits as sent, e.g. {@code 32.50}; compared and stored unchanged
 */
public record Digits(String text) {
  private static final Pattern FORM =
      Pattern.compile("-?[0-9]{1,24}(\\.[0-9]{1,24})?([eE][+-]?[0-9]{1,2})?");

  /**
   * @throws IllegalArgumentException when the text is not a decimal number of this form
   */
  public Digits {
    Objects.requireNonNull(text, "text");
    if (!FORM.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1");
    }
  }

  /** The exact value. */
  public BigDecimal value() {
    return new BigDecimal(text);
  }

  @Override
  public String toString() {
    return text;
  }
}
