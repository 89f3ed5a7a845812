package witnessmark.doctor;

import java.util.Optional;
import witnessmark.torque.Visible;

/**
 * One thing that was looked at.
 *
 * @param area what it belongs to, e.g. {@code ledger}
 * @param found what was found, a sentence on one line
 * @param next what to do about it, with the exact command where there is one
 */
public record Finding(String area, Mark mark, String found, Optional<String> next) {
  public Finding {
    found = Visible.of(found);
    next = next.map(Visible::of);
    if (mark == Mark.BAD && next.isEmpty()) {
      throw new IllegalArgumentException("what is bad needs a next step: " + found);
    }
  }

  static Finding good(String area, String found) {
    return new Finding(area, Mark.GOOD, found, Optional.empty());
  }

  static Finding warn(String area, String found, String next) {
    return new Finding(area, Mark.WARN, found, Optional.of(next));
  }

  static Finding bad(String area, String found, String next) {
    return new Finding(area, Mark.BAD, found, Optional.of(next));
  }
}
