package witnessmark.trial.faults;

/**
 * What was counted over a fault.
 *
 * @param sentKept readings whose sender keeps them until they are acknowledged, and that it gave
 * @param sentLoose readings that were sent once, over a serial line or with QoS 0
 * @param acknowledged acknowledgements of the daemon that the broker noted
 * @param recordedKept of those kept, how many are on record, each counted once
 * @param recordedLoose of those sent once, how many are on record, each counted once
 * @param refused entries of bytes that could not be read
 * @param verdicts published verdicts with different ids
 * @param doubled entries of a reading that is on record already
 * @param stated messages that entries say were not kept
 */
record Figures(
    long sentKept,
    long sentLoose,
    long acknowledged,
    long recordedKept,
    long recordedLoose,
    long refused,
    long verdicts,
    long doubled,
    long stated) {
  /** Of a trial that was not run to its end. */
  static final Figures NONE = new Figures(0, 0, 0, 0, 0, 0, 0, 0, 0);

  /** Readings that their sender kept and that are not on record. */
  long lost() {
    return sentKept - recordedKept;
  }

  /** Readings sent once that are not on record. */
  long missing() {
    return sentLoose - recordedLoose;
  }
}
