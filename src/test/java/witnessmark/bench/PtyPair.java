package witnessmark.bench;

import java.io.ByteArrayOutputStream;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/**
 * A serial cable made by socat: two pseudo-terminals, of which the bridge opens {@link #bridge} and
 * the test plays the wrench on the other end. Pulled and plugged it keeps its two paths.
 */
public final class PtyPair implements AutoCloseable {
  private final Path bridge;
  private final Path wrench;
  private Process socat;
  private FileInputStream in;
  private FileOutputStream out;

  private PtyPair(Path directory) {
    this.bridge = directory.resolve("tty-bridge");
    this.wrench = directory.resolve("tty-wrench");
  }

  /** Plugs in a new cable whose ends are links in the directory. */
  public static PtyPair plug(Path directory) {
    PtyPair pair = new PtyPair(directory);
    pair.plug();
    return pair;
  }

  /** The end the bridge opens. */
  public Path bridge() {
    return bridge;
  }

  /** The wrench's end, for a program that opens it itself; the test's own end stays open too. */
  public Path wrench() {
    return wrench;
  }

  /** Plugs the cable in again after {@link #pull}. */
  public void plug() {
    try {
      socat =
          new ProcessBuilder(
                  "socat", "pty,raw,echo=0,link=" + bridge, "pty,raw,echo=0,link=" + wrench)
              .inheritIO()
              .start();
      long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
      while (!(Files.exists(bridge) && Files.exists(wrench))) {
        if (System.nanoTime() > deadline || !socat.isAlive()) {
          throw new IllegalStateException("socat made no pair of terminals");
        }
        Thread.sleep(10);
      }
      out = new FileOutputStream(wrench.toFile());
      in = new FileInputStream(wrench.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Pulls the cable: both ends hang up and their paths go. */
  public void pull() {
    socat.destroyForcibly();
    Exit.await(socat);
    try {
      in.close();
      out.close();
      // A killed socat leaves its links behind; a pulled cable leaves no path.
      for (Path end : new Path[] {bridge, wrench}) {
        if (Files.exists(end, LinkOption.NOFOLLOW_LINKS)) {
          Files.delete(end);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Sends bytes from the wrench. */
  public void write(byte[] bytes) {
    try {
      out.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What came to the wrench: exactly {@code count} bytes, or fewer when the time is over. */
  public byte[] read(int count, Duration longest) {
    long deadline = System.nanoTime() + longest.toNanos();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      while (bytes.size() < count && System.nanoTime() < deadline) {
        int ready = in.available();
        if (ready > 0) {
          // Not readNBytes: FileInputStream would ask a terminal for its file position.
          byte[] some = new byte[Math.min(ready, count - bytes.size())];
          bytes.write(some, 0, Math.max(0, in.read(some)));
        } else {
          Thread.sleep(5);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
    return bytes.toByteArray();
  }

  @Override
  public void close() {
    if (socat.isAlive()) {
      pull();
    }
  }
}
