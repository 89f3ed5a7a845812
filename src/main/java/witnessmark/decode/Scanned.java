package witnessmark.decode;

import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Label;

/**
 * A code that was scanned at a station.
 *
 * @param scan the code, 1 to 512 characters (code points)
 * @param operator the badge of who scanned, where the sender knows it
 * @param raw the message's own JSON text exactly as received
 */
public record Scanned(String scan, Optional<String> operator, String raw) implements Decoded {
  /**
   * @throws IllegalArgumentException when the code or the badge has not its form
   */
  public Scanned {
    int length = scan.codePointCount(0, scan.length());
    if (length < 1 || length > 512) {
      throw new IllegalArgumentException(
          "scan has " + length + " characters; 1 to 512 are allowed");
    }
    // Half of a surrogate pair has no UTF-8 form, so it could not be put on record.
    if (scan.codePoints().anyMatch(c -> Character.getType(c) == Character.SURROGATE)) {
      throw new IllegalArgumentException(
          "scan holds half of a surrogate pair; whole characters are allowed");
    }
    operator.ifPresent(o -> Label.check("operator", o));
    Objects.requireNonNull(raw, "raw");
  }
}
