package witnessmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongConsumer;
import java.util.function.LongSupplier;

/** A count on standard error for work that takes over a second, where a person sees it. */
final class Progress implements LongConsumer, AutoCloseable {
  private static final long FIRST = 1_000_000_000L;
  private static final long NEXT = 200_000_000L;
  private static final int BAR = 30;

  private final String doing;
  private final LongSupplier total;
  private final boolean seen;
  private long due = System.nanoTime() + FIRST;
  private boolean shown;

  /**
   * @param doing what is done, e.g. {@code verifying}
   * @param total how many there are
   */
  Progress(String doing, long total) {
    this(doing, () -> total);
  }

  /**
   * @param total the same where it is known only when it has begun
   */
  Progress(String doing, LongSupplier total) {
    this(doing, total, terminal(2));
  }

  private Progress(String doing, LongSupplier total, boolean seen) {
    this.doing = doing;
    this.total = total;
    this.seen = seen;
  }

  /** For work that prints its answers meanwhile: nothing where they go to the same screen. */
  static Progress whilePrinting(String doing, long total) {
    return new Progress(doing, () -> total, terminal(2) && !terminal(1));
  }

  @Override
  public void accept(long done) {
    if (seen && System.nanoTime() >= due) {
      due = System.nanoTime() + NEXT;
      shown = true;
      long all = Math.max(1, total.getAsLong());
      int filled = (int) Math.min(BAR, done * BAR / all);
      System.err.printf(
          "\r%s [%s%s] %d of %d", doing, "#".repeat(filled), "-".repeat(BAR - filled), done, all);
      System.err.flush();
    }
  }

  /** This one after another, whose line is wiped first. */
  LongConsumer after(Progress before) {
    return done -> {
      before.close();
      accept(done);
    };
  }

  /** Wipes the line. */
  @Override
  public void close() {
    if (shown) {
      shown = false;
      System.err.print("\r\u001b[K");
      System.err.flush();
    }
  }

  private static boolean terminal(int descriptor) {
    try {
      String target = Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor)).toString();
      return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
    } catch (IOException | UnsupportedOperationException e) {
      return false;
    }
  }
}
