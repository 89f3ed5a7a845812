package witnessmark.procedure;

/**
 * Something about a procedure that is allowed but that somebody should look at before release.
 *
 * @param step the id of the step it is about
 * @param sentence what was found, without the step's name; never proposes a torque
 */
public record Finding(String step, String sentence) {
  /** {@code warning}: a finding never stops a release. */
  public String severity() {
    return "warning";
  }

  /** {@code warning: step "pivot": sentence}. */
  @Override
  public String toString() {
    return severity() + ": step \"" + step + "\": " + sentence;
  }
}
