package witnessmark.job;

/** How a job came to its state: the state before, and the fact that changed it. */
final class Past {
  private final JobState before;
  private final Act act;

  Past(JobState before, Act act) {
    this.before = before;
    this.act = act;
  }

  JobState before() {
    return before;
  }

  Act act() {
    return act;
  }

  /** Short, since a job's whole history hangs on it. */
  @Override
  public String toString() {
    return "entry " + act.n();
  }
}
