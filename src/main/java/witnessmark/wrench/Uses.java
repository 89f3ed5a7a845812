package witnessmark.wrench;

/**
 * How much of the readings that a calibration is good for was used.
 *
 * @param operations readings after which it is no longer in force
 * @param before readings since the calibration that were on record when it was entered
 * @param counted readings on record after its entry
 */
public record Uses(long operations, long before, long counted) {
  /** How many readings were taken since the calibration. */
  public long used() {
    return before + counted;
  }

  /** How many are left; 0 when all are used. */
  public long left() {
    return Math.max(0, operations - used());
  }

  /** Whether the next reading is the last that it is good for. */
  public boolean lastIsNext() {
    return used() + 1 == operations;
  }

  /** After a further reading. */
  public Uses once() {
    return counted(counted + 1);
  }

  /** With that many readings on record after its entry. */
  public Uses counted(long readings) {
    return new Uses(operations, before, readings);
  }
}
