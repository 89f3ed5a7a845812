package witnessmark.ledger;

/** What an entry changes in the list of jobs. */
public sealed interface JobChange {
  String job();

  /** A new job. */
  record Opened(String job, String unit, String procedure, String revision, String station)
      implements JobChange {}

  /**
   * Another status; {@code station} is null where it stays, {@code ends} marks the job's last
   * entry.
   */
  record Moved(String job, String status, String station, boolean ends) implements JobChange {}
}
