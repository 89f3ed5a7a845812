package witnessmark.scan;

import java.time.Instant;
import java.util.Optional;
import witnessmark.job.Shop;
import witnessmark.torque.Label;

/**
 * A code as it was scanned.
 *
 * @param text what the scanner read, of any content
 * @param station where
 * @param operator the badge of who scanned, where the scanner says
 * @param at when the bridge took it
 */
public record Code(String text, String station, Optional<String> operator, Instant at) {
  /** Whether it could be the name of anything, and so may be shown to people. */
  boolean readable() {
    try {
      Label.check("code", text);
      return true;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  /** Who acts by it: whoever the scanner names, else who works at the station. */
  Optional<String> by(Shop shop) {
    return operator.or(() -> Optional.ofNullable(shop.operatorAt().get(station)));
  }
}
