package witnessmark.scan;

import java.util.List;
import java.util.Optional;
import witnessmark.desk.Attest;
import witnessmark.desk.Declined;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;

/** A step of the job at the station. */
final class StepCode {
  private StepCode() {}

  static Optional<Meant> read(Shop shop, Code code, JobState job) {
    return job.plan().procedure().step(code.text()).map(step -> read(shop, code, job, step));
  }

  private static Meant read(Shop shop, Code code, JobState job, Step step) {
    if (step instanceof AttestStep) {
      return attested(shop, code, job, step.id());
    } else if (step instanceof MeasureStep) {
      throw new Declined(
          "Step "
              + step.id()
              + " wants numbers, which no scan gives: enter them (measure "
              + step.id()
              + ").");
    } else if (step instanceof TightenStep t) {
      throw new Declined(
          "Step "
              + step.id()
              + " is tightened, not confirmed: scan one of its positions, e.g. "
              + t.fastener(0)
              + ".");
    }
    throw new IllegalStateException("no meaning for " + step.getClass());
  }

  /** Confirms the step. */
  static Meant attested(Shop shop, Code code, JobState job, String step) {
    String by =
        code.by(shop)
            .orElseThrow(
                () ->
                    new Declined(
                        "Nobody is known at "
                            + code.station()
                            + " to confirm "
                            + step
                            + ": scan your badge, then "
                            + code.text()
                            + " again."));
    Acted acted = Acted.by(new Attest(job.job(), step, by), shop, code.at());
    List<Entry> entries = acted.entries();
    String text = by + " confirms " + step + ". " + acted.next(job.job());
    return Meant.of(Meaning.ATTEST, text, entries);
  }
}
