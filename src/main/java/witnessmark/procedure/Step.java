package witnessmark.procedure;

import java.util.List;
import java.util.Optional;

/** One entry of the sequence. */
public sealed interface Step permits TightenStep, AttestStep, MeasureStep {
  /** Unique within the procedure: lower-case letters, digits and hyphens. */
  String id();

  String title();

  /**
   * What must be complete before this step may begin. Empty: the step before it in the file (mere
   * sequence). Present: exactly these, which are physical prerequisites, so that undoing one of
   * them undoes this step too; an empty list means the step may begin at any time.
   */
  Optional<List<Prerequisite>> after();

  /** What the person at the bench should see beside the step. */
  Optional<String> note();

  /** Where a picture of the step is, relative to the procedure file or a URL. */
  Optional<String> picture();
}
