package witnessmark.job;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.entry.Disposition;
import witnessmark.entry.Role;
import witnessmark.procedure.Criticality;
import witnessmark.procedure.TightenStep;

/** What may be decided on a nonconforming fastener, whoever decides. */
public final class Choices {
  private Choices() {}

  /** The decisions that are open, each with the least role that it takes. */
  public static Map<Disposition, Role> of(JobState job, int fastener) {
    Map<Disposition, Role> open = new EnumMap<>(Disposition.class);
    for (Disposition d : Disposition.values()) {
      if (against(job, fastener, d).isEmpty()) {
        open.put(d, least(job, fastener, d));
      }
    }
    return open;
  }

  /**
   * The least role that the decision takes. A second person is another one than whose reading it
   * was; where that is not on record nobody can be shown to be another.
   */
  public static Role least(JobState job, int fastener, Disposition disposition) {
    Role least = Authority.least(job.plan().stepOf(fastener).criticality(), disposition);
    return least == Role.SECOND && job.condition(fastener).flaw().flatMap(Flaw::hand).isEmpty()
        ? Role.QUALITY
        : least;
  }

  /** Why that cannot be decided, in half a sentence about the fastener; empty where it can. */
  public static Optional<String> against(JobState job, int fastener, Disposition disposition) {
    TightenStep step = job.plan().stepOf(fastener);
    Flaw flaw = job.condition(fastener).flaw().orElseThrow();
    return switch (disposition) {
      case REWORK -> {
        if (step.care().rework().singleUse()) {
          yield Optional.of("may be used only once");
        }
        yield flaw.overtightened() && step.criticality() == Criticality.DANGER
            ? Optional.of("was overtightened, and its step is of criticality danger")
            : Optional.empty();
      }
      case USE_AS_IS -> flaw.loose() ? Optional.of(loosened(flaw)) : Optional.empty();
      case REPLACE, SCRAP -> Optional.empty();
    };
  }

  private static String loosened(Flaw flaw) {
    String since =
        flaw.verdict().isEmpty()
            ? ""
            : " since entry " + flaw.entry() + ", or what it depends on was";
    return "was loosened" + since + ": there is nothing to accept";
  }
}
