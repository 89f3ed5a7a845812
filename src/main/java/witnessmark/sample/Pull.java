package witnessmark.sample;

import java.time.Instant;
import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Judged;
import witnessmark.torque.Torque;
import witnessmark.torque.Verdict;

/**
 * A torque event with the decision that counts now.
 *
 * @param entry its number in the log
 * @param place by when it stands in its job
 * @param moment when it happened
 * @param job empty where it belongs to none
 * @param torque at the fastener
 * @param setAside whether a person took it out of the job
 */
record Pull(
    long entry,
    Instant place,
    Instant moment,
    Optional<String> job,
    String wrench,
    Optional<String> operator,
    Torque torque,
    Judged judged,
    boolean setAside)
    implements Fact {

  @Override
  public long n() {
    return entry;
  }

  boolean placed() {
    return !setAside && job.isPresent() && judged.fastener().isPresent();
  }

  /** The fastener, where it is {@link #placed}. */
  String fastener() {
    return judged.fastener().orElseThrow();
  }

  /** The step of the fastener. */
  String step() {
    return fastener().substring(0, fastener().indexOf('/'));
  }

  /** Whether it was a try to tighten a fastener that was due, and was judged. */
  boolean attempt() {
    return judged.verdict().isPresent()
        && !judged.reason().again()
        && (judged.effect() == Effect.CREDITED
            || judged.effect() == Effect.AGAIN
            || judged.effect() == Effect.NONCONFORMING);
  }

  /** Whether it was in its band and counted. */
  boolean accepted() {
    return judged.effect() == Effect.CREDITED;
  }

  /** Whether the fastener, or the state it had reached, is gone with it. */
  boolean loosens() {
    return judged.effect() == Effect.LOOSENED
        || (judged.effect() == Effect.NONCONFORMING && judged.verdict().isEmpty());
  }

  /** Why it is no value of the process, where it was not accepted. */
  Omission omission() {
    if (loosens()) {
      return Omission.LOOSENED;
    }
    if (judged.reason().again() || judged.effect() == Effect.RECHECKED) {
      return Omission.HIT_AGAIN;
    }
    if (!judged.objections().isEmpty() && judged.verdict().equals(Optional.of(Verdict.IN_BAND))) {
      return Omission.NOT_RELIED_ON;
    }
    return attempt() ? Omission.NOT_ACCEPTED : Omission.OUT_OF_TURN;
  }
}
