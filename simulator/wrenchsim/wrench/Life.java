package wrenchsim.wrench;

import java.util.Objects;
import java.util.Optional;

/**
 * What becomes of a wrench in use.
 *
 * @param wear what it shows more, relative, after a thousand events; negative: less; within ±0.2
 * @param restart when its counter begins again, where it ever does
 * @param store how it works out of range, where it is ever out of range
 */
public record Life(double wear, Optional<Restart> restart, Optional<Store> store) {

  /** A wrench that stays as it is and is always in range. */
  public static final Life EVEN = new Life(0, Optional.empty(), Optional.empty());

  public Life {
    Objects.requireNonNull(restart, "restart");
    Objects.requireNonNull(store, "store");
    if (!(Math.abs(wear) <= 0.2)) {
      throw new IllegalArgumentException("the wear must lie within 0.2 either way, but is " + wear);
    }
  }
}
