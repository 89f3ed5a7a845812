package witnessmark.trial.faults;

/** A sender of readings that are numbered from 1. */
interface Hand extends AutoCloseable {
  String wrench();

  /** Whether it keeps a reading until it was taken. */
  boolean keeps();

  /** How many it has sent. */
  long sent();

  void send(int count) throws InterruptedException;

  @Override
  void close();
}
