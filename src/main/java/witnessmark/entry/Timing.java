package witnessmark.entry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Digits;

/**
 * When a torque event happened, and how that is known.
 *
 * @param moment when it happened, as used for the decision
 * @param clock whose clock said so: {@code wrench}, {@code corrected} (the wrench's, with an
 *     offset) or {@code bridge}
 * @param offset seconds that were added to the wrench's clock
 * @param late whether it came so long after it happened that it stands in the record where it
 *     happened; otherwise it stands where it came
 * @param stored whether it came as one of a stored burst
 * @param counter what is odd about the wrench's event number: {@code began-anew} (it counts from
 *     low numbers again) or {@code used-before} (another event has that number)
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Timing(
    Instant moment,
    String clock,
    Optional<Digits> offset,
    Optional<Boolean> late,
    Optional<Boolean> stored,
    Optional<String> counter) {
  public Timing {
    Objects.requireNonNull(moment, "moment");
    Objects.requireNonNull(clock, "clock");
  }

  /** Whether the wrench's own time counted. */
  public boolean byWrench() {
    return !clock.equals("bridge");
  }

  /** Whether it stands in the record where it happened and not where it came. */
  public boolean tardy() {
    return late.orElse(false);
  }
}
