package witnessmark.record;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.procedure.Pass;
import witnessmark.procedure.TightenStep;

/**
 * One pass of one fastener: what was asked, everything that was tried, and how it stands.
 *
 * @param fastener its full name
 * @param step the step it belongs to
 * @param pass what was asked
 * @param attempts in the order in which they happened
 * @param state how it stands
 * @param by the entry it stands by: of the torque event, or of the disposition that accepted it
 */
public record PassRecord(
    String fastener,
    TightenStep step,
    Pass pass,
    List<Attempt> attempts,
    State state,
    OptionalLong by) {
  public PassRecord {
    attempts = List.copyOf(attempts);
  }

  /** How a pass of a fastener stands. */
  public enum State {
    /** Done by an accepted reading. */
    STANDS,
    /** Done by a disposition that lets the fastener be used as it is. */
    CONCEDED,
    /** The fastener waits for a disposition, or was scrapped. */
    NONCONFORMING,
    /** Not done. */
    PENDING;

    public String code() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** The reading to show for it: the one it stands by, else the newest. */
  public Optional<Attempt> shown() {
    return attempts.stream()
        .filter(Attempt::stands)
        .findFirst()
        .or(() -> attempts.stream().reduce((older, newer) -> newer));
  }
}
