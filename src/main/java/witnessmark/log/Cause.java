package witnessmark.log;

import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.StackTraceElementProxy;

/** What was thrown, and where, in one line. */
final class Cause {
  private static final int FRAMES = 6;
  private static final int CAUSES = 5;

  private Cause() {}

  static String of(IThrowableProxy thrown) {
    StringBuilder text = new StringBuilder();
    IThrowableProxy next = thrown;
    for (int i = 0; next != null && i < CAUSES; i++) {
      text.append(i == 0 ? "" : ", caused by ").append(next.getClassName());
      if (next.getMessage() != null) {
        text.append(": ").append(next.getMessage());
      }
      StackTraceElementProxy[] frames = next.getStackTraceElementProxyArray();
      for (int f = 0; f < Math.min(FRAMES, frames.length); f++) {
        text.append(f == 0 ? " " : ", ").append(frames[f].getSTEAsString());
      }
      next = next.getCause();
    }
    return text.toString();
  }
}
