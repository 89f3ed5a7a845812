package witnessmark.desk;

import java.util.Optional;
import witnessmark.job.JobState;
import witnessmark.job.Status;
import witnessmark.procedure.Stage;
import witnessmark.procedure.Step;

/** Finds the attest or measure step that a person wants to satisfy. */
final class Gate {
  private Gate() {}

  static <T extends Step> T due(JobState job, String id, Class<T> kind, String verb) {
    if (job.status() == Status.SUSPENDED) {
      throw new Declined("Job " + job.job() + " is suspended; resume it first.");
    }
    Optional<Stage> stage =
        job.plan().stages().stream()
            .filter(s -> s.step().id().equals(id) && kind.isInstance(s.step()))
            .findFirst();
    if (stage.isEmpty()) {
      String some =
          Few.of(
              job.plan().procedure().steps().stream()
                  .filter(kind::isInstance)
                  .map(Step::id)
                  .toList());
      throw new Declined(
          "Procedure "
              + job.plan().procedure().id()
              + " has no step \""
              + id
              + "\" to "
              + verb
              + "; "
              + (some.isEmpty() ? "it has none of that kind: go on without" : "name one of " + some)
              + ".");
    }
    if (job.done(stage.get())) {
      throw new Declined("Step " + id + " is done already (entry " + job.gates().get(id) + ").");
    }
    if (!job.openStages().contains(stage.get())) {
      String first =
          Few.of(
              stage.get().requires().stream()
                  .map(r -> job.plan().stages().get(r))
                  .filter(r -> !job.done(r))
                  .map(Stage::key)
                  .toList());
      throw new Declined("Step " + id + " is not due yet: do " + first + " first.");
    }
    return kind.cast(stage.get().step());
  }
}
