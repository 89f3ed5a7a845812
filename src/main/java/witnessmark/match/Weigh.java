package witnessmark.match;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.procedure.Stage;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;

/**
 * Sets out which fasteners a reading could have been on, and what speaks for and against each: for
 * people who ask why. Decides nothing; {@link Place} does.
 */
public final class Weigh {
  /** Tight ones beyond this many are not set out one by one. */
  private static final int MOST = 6;

  private Weigh() {}

  /**
   * @param job as it was when the reading came
   * @param named the fastener that a person named for it later, where one did
   */
  public static List<Weighed> of(JobState job, TorqueEvent event, Optional<String> named) {
    OptionalInt said =
        named
            .or(event::fastener)
            .or(job::named)
            .map(job.plan()::fastener)
            .orElse(OptionalInt.empty());
    if (said.isPresent()) {
      Stage stage = stage(job, event, said.getAsInt());
      return List.of(Testimony.of(job, event, said.getAsInt(), stage, "named"));
    }
    List<Weighed> weighed = new ArrayList<>();
    Set<Integer> expected = new LinkedHashSet<>();
    if (event.direction() == Direction.CW) {
      for (Stage stage : InOrder.open(job)) {
        int first = job.next(stage).get(0);
        expected.add(first);
        weighed.add(Testimony.of(job, event, first, stage, "expected"));
      }
    }
    tight(job, event, expected)
        .filter(f -> !expected.contains(f))
        .limit(MOST)
        .forEach(
            f ->
                weighed.add(
                    Testimony.of(
                        job,
                        event,
                        f,
                        job.plan().stage(f, Tight.last(job.condition(f))),
                        "tight")));
    return weighed;
  }

  /** Where a person's or the wrench's word puts the reading. */
  private static Stage stage(JobState job, TorqueEvent event, int fastener) {
    return Place.named(job, event, job.plan().name(fastener), Reason.ASSIGNED_BY_PERSON)
        .stage()
        .orElseThrow();
  }

  /** Those that the reading could have hit again or loosened, pulled last first. */
  private static java.util.stream.Stream<Integer> tight(
      JobState job, TorqueEvent event, Set<Integer> expected) {
    return IntStream.range(0, job.plan().fasteners())
        .filter(f -> job.condition(f).pull().isPresent())
        .filter(
            f ->
                event.direction() == Direction.CCW
                    || Tight.couldBe(job.condition(f), Held.least(event))
                    || expected.stream().anyMatch(e -> Tight.slippedOn(job, event, f, e)))
        .boxed()
        .sorted((a, b) -> Tight.newer(job, b, a) ? 1 : -1);
  }
}
