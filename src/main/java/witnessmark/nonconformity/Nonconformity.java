package witnessmark.nonconformity;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.procedure.Criticality;
import witnessmark.torque.Verdict;

/**
 * A fastener that did not conform.
 *
 * @param entry the entry that made it so
 * @param since when that happened
 * @param verdict of the reading; empty where the fastener was loosened and may be used only once
 * @param state how it stands
 * @param decisions what was decided on it, in order
 */
public record Nonconformity(
    long entry,
    Instant since,
    String unit,
    String job,
    String fastener,
    Criticality criticality,
    Optional<Verdict> verdict,
    State state,
    List<Decision> decisions) {
  public Nonconformity {
    Objects.requireNonNull(since, "since");
    decisions = List.copyOf(decisions);
  }

  /** How a nonconformity stands. */
  public enum State {
    /** Nobody has decided yet. */
    OPEN,
    /** It was decided, and the fastener is still to be tightened anew. */
    TO_BE_DONE,
    /** It was decided and that is done, or its job has ended since. */
    SETTLED,
    /** Its job was abandoned before anybody decided. */
    LEFT_OPEN
  }

  /**
   * What a person decided.
   *
   * @param n its entry
   */
  public record Decision(long n, Entry.Disposed disposed) {}

  /** For how long it has been open, or was until it was first decided. */
  public Duration age(Instant now) {
    return Duration.between(since, decisions.isEmpty() ? now : decisions.get(0).disposed().at());
  }
}
