package witnessmark.fuzz;

import java.util.HexFormat;

/** Ends the run when an input does not come to an end, and prints it. */
final class Watchdog {
  private static final long LIMIT_NANOS = 60_000_000_000L;

  private volatile String target;
  private volatile byte[] input;
  private volatile long began;

  Watchdog() {
    Thread thread = new Thread(this::watch, "watchdog");
    thread.setDaemon(true);
    thread.start();
  }

  void begins(String name, byte[] bytes) {
    target = name;
    began = System.nanoTime();
    input = bytes;
  }

  void ends() {
    input = null;
  }

  private void watch() {
    try {
      while (true) {
        Thread.sleep(1000);
        byte[] now = input;
        if (now != null && System.nanoTime() - began > LIMIT_NANOS && input == now) {
          System.out.println(target + " does not end on " + HexFormat.of().formatHex(now));
          Runtime.getRuntime().halt(1);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
