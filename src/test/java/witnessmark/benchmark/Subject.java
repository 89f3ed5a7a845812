package witnessmark.benchmark;

/** Something that takes readings from a broker and puts them on disk before it acknowledges. */
interface Subject extends AutoCloseable {
  /** The topic it answers on, once a reading is on disk. */
  String answers();

  /** Connects and begins to take. */
  void start();

  /** How many readings are on disk. */
  long durable();

  @Override
  void close();
}
