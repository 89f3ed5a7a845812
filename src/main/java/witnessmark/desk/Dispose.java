package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.Role;
import witnessmark.job.Choices;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.job.Undo;
import witnessmark.procedure.Criticality;
import witnessmark.procedure.Stage;
import witnessmark.torque.Label;

/**
 * Decides what happens to a nonconforming fastener.
 *
 * @param concession number of the concession that it is used under
 */
public record Dispose(
    String job,
    String fastener,
    Disposition disposition,
    String by,
    Optional<String> concession,
    String because)
    implements Command {
  /**
   * @throws IllegalArgumentException when the reason says nothing, or the concession has no form or
   *     nothing to concede
   */
  public Dispose {
    Because.check(because);
    concession.ifPresent(c -> Label.check("concession", c));
    if (concession.isPresent() && disposition != Disposition.USE_AS_IS) {
      throw new IllegalArgumentException(
          "a concession (--concession) goes with use-as-is, not with " + disposition.code());
    }
  }

  /** A decision without a concession. */
  public Dispose(String job, String fastener, Disposition disposition, String by, String because) {
    this(job, fastener, disposition, by, Optional.empty(), because);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    JobState state = Ask.job(shop, job);
    int f = Ask.fastener(state, fastener);
    Condition condition = state.condition(f);
    if (!condition.nonconforming()) {
      throw new Declined("Fastener " + fastener + " is not nonconforming: nothing to dispose.");
    }
    if (condition.scrapped()) {
      throw new Declined("Fastener " + fastener + " was scrapped: abandon the job.");
    }
    Choices.against(state, f, disposition).ifPresent(why -> declined(state, f, why));
    Role role = new Decider(shop, state, f, disposition).role(by);
    if (disposition == Disposition.USE_AS_IS
        && concession.isEmpty()
        && state.plan().stepOf(f).criticality() == Criticality.DANGER) {
      throw new Declined(
          "Fastener "
              + fastener
              + ", of criticality danger, is used as it is only under a concession:"
              + " give its number (--concession).");
    }
    boolean loosens = disposition == Disposition.REWORK || disposition == Disposition.REPLACE;
    List<String> undoes = loosens ? Undo.of(state, f).stream().map(Stage::key).toList() : List.of();
    return List.of(
        new Entry.Disposed(
            at,
            job,
            fastener,
            condition.nonconformity().getAsLong(),
            disposition,
            undoes,
            by,
            Optional.of(role),
            concession,
            because));
  }

  private void declined(JobState state, int f, String why) {
    String open =
        Choices.of(state, f).keySet().stream()
            .map(Disposition::code)
            .collect(Collectors.joining(", "));
    throw new Declined("Fastener " + fastener + " " + why + ". Choose: " + open + ".");
  }
}
