package witnessmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.record.Attempt;
import witnessmark.record.JobRecord;
import witnessmark.record.OutOfTolerance;
import witnessmark.torque.Band;
import witnessmark.torque.Torque;

/** What a reader of a record must know beside its figures: signs at readings, and cautions. */
public final class Remarks {
  /** Beside a fastener: its name is one by count. */
  private static final String BY_COUNT = " *";

  /** Before a torque that was converted and rounded. */
  private static final String ABOUT = "~";

  private Remarks() {}

  /**
   * The reading digit for digit, with what it is in the unit of its band where that is another:
   * {@code ~}.
   */
  public static String torque(Attempt attempt, Band band) {
    return Phrases.torque(attempt) + converted(attempt, band).map(t -> " " + ABOUT + t).orElse("");
  }

  /** The torque that was judged, in the unit of its band where that is another. */
  static Optional<String> converted(Attempt attempt, Band band) {
    return InBandsUnit.of(judged(attempt), band);
  }

  private static Torque judged(Attempt attempt) {
    return attempt
        .judged()
        .atFastener()
        .map(Torque::parse)
        .orElse(attempt.taken().event().torque());
  }

  /** The fastener, marked where the name is one by count. */
  public static String fastener(Attempt attempt) {
    return attempt.judged().fastener().orElse("no fastener") + (attempt.byCount() ? BY_COUNT : "");
  }

  /** What the signs at a job's readings mean, a sentence each; none where there is no sign. */
  public static List<String> signs(JobRecord job) {
    List<String> signs = new ArrayList<>();
    if (job.byCount()) {
      signs.add(
          "*: one of its group, and it is not known which. The group may be done in any order and no"
              + " position came with the reading, so it was counted: that so many were tightened is on"
              + " record, the name beside the reading is that of the order.");
    }
    if (job.readings().stream().anyMatch(a -> a.judged().verdict().isEmpty())) {
      signs.add(
          "(…): no verdict. The reading was not judged against the band; the word says what it did.");
    }
    boolean converted =
        job.passes().stream()
            .anyMatch(
                p ->
                    p.attempts().stream().anyMatch(a -> converted(a, p.pass().band()).isPresent()));
    if (converted) {
      signs.add(
          ABOUT
              + ": converted to the unit of the band by the exact factor and rounded, to be read beside"
              + " it; the verdict is decided on the exact value.");
    }
    return signs;
  }

  /** That a wrench was found out of tolerance later, and what of the job that concerns. */
  public static String caution(OutOfTolerance found) {
    return found.wrench()
        + " was found out of tolerance after this: "
        + found.told()
        + " (entry "
        + found.entry()
        + "). Since its last good calibration before it took "
        + found.readings()
        + (found.readings() == 1 ? " reading" : " readings")
        + " of this job, and "
        + found.standing()
        + (found.standing() == 1 ? " pass stands" : " passes stand")
        + " by one of them: a torque told as in its band may have been outside. The verdicts below are"
        + " those of the day; the shop judges them anew with: recall "
        + found.wrench()
        + ".";
  }

  /** How many readings have no badge; empty where every one has. */
  public static Optional<String> nameless(JobRecord job) {
    List<Attempt> all = job.readings();
    long without = all.stream().filter(a -> a.operator().isEmpty()).count();
    return without == 0
        ? Optional.empty()
        : Optional.of(
            "No badge is on record for "
                + without
                + " of "
                + all.size()
                + (all.size() == 1 ? " reading." : " readings."));
  }
}
