package witnessmark.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;

/** Measures what one input costs the thread that reads it. */
final class Meter {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private Meter() {}

  /**
   * What came of one input.
   *
   * @param answer null where it threw
   * @param thrown null where it answered
   * @param nanos the thread's own processor time
   * @param allocated bytes
   */
  record Measured<A>(A answer, Throwable thrown, long nanos, long allocated) {}

  /** The processor time that this thread has taken, in nanoseconds. */
  static long processor() {
    return THREADS.getCurrentThreadCpuTime();
  }

  static <A> Measured<A> once(Target<A> target, byte[] input) {
    A answer = null;
    Throwable thrown = null;
    long allocated = THREADS.getCurrentThreadAllocatedBytes();
    long began = THREADS.getCurrentThreadCpuTime();
    try {
      answer = target.parse(input);
    } catch (Exception | StackOverflowError | OutOfMemoryError | AssertionError e) {
      thrown = e;
    }
    long nanos = THREADS.getCurrentThreadCpuTime() - began;
    allocated = THREADS.getCurrentThreadAllocatedBytes() - allocated;
    return new Measured<>(answer, thrown, nanos, allocated);
  }

  /** The least of three further runs: classes are loaded by then, and nothing else is in it. */
  static <A> Measured<A> least(Target<A> target, byte[] input) {
    Measured<A> least = once(target, input);
    for (int i = 0; i < 2; i++) {
      Measured<A> again = once(target, input);
      least =
          new Measured<>(
              least.answer(),
              least.thrown(),
              Math.min(least.nanos(), again.nanos()),
              Math.min(least.allocated(), again.allocated()));
    }
    return least;
  }
}
