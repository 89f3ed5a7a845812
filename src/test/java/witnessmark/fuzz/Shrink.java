package witnessmark.fuzz;

/** Makes an input smaller as long as it is the same fault. */
final class Shrink {
  private static final int TRIES = 3_000;
  private static final long NANOS = 10_000_000_000L;

  private Shrink() {}

  static Fault of(Target<?> target, Fault fault) {
    Fault least = fault;
    long end = Meter.processor() + NANOS;
    int tries = 0;
    for (int size = Math.max(1, fault.input().length / 2); size >= 1; size /= 2) {
      for (int at = 0; more(least, at + size, tries, end); tries++) {
        byte[] less = Mutator.put(least.input(), at, at + size, new byte[0]);
        Fault found = Fault.of(target, less);
        if (found != null && found.what().equals(fault.what())) {
          least = found;
        } else {
          at += size;
        }
      }
    }
    return least;
  }

  private static boolean more(Fault least, int to, int tries, long end) {
    return to <= least.input().length && tries < TRIES && Meter.processor() < end;
  }
}
