package witnessmark.bench;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Stream;

/**
 * One thread of another process, stopped by the kernel as if it hung in a call, while its fellows
 * go on: {@code ptrace}, as a debugger does it.
 */
public final class HeldThread {
  // linux/ptrace.h
  private static final long ATTACH = 16;
  private static final long DETACH = 17;

  /** The C library's. */
  public interface Libc extends Library {
    long ptrace(long request, int thread, long address, long data);
  }

  private final Libc libc = Native.load("c", Libc.class);

  /** Whoever attached must be the one who lets go. */
  private final ExecutorService tracer = Executors.newSingleThreadExecutor();

  private final int thread;

  private HeldThread(int thread) {
    this.thread = thread;
  }

  /** Stops the process's thread of that name. */
  public static HeldThread of(long pid, String name) throws IOException {
    HeldThread held = new HeldThread(number(pid, name));
    held.ask(ATTACH);
    return held;
  }

  private static int number(long pid, String name) throws IOException {
    try (Stream<Path> tasks = Files.list(Path.of("/proc", Long.toString(pid), "task"))) {
      List<Path> named = tasks.filter(t -> read(t.resolve("comm")).equals(name)).toList();
      if (named.size() != 1) {
        throw new AssertionError(pid + " has " + named.size() + " threads named " + name);
      }
      return Integer.parseInt(named.get(0).getFileName().toString());
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file).strip();
    } catch (IOException e) {
      return ""; // it has just ended
    }
  }

  private void ask(long request) {
    long answer =
        CompletableFuture.supplyAsync(() -> libc.ptrace(request, thread, 0, 0), tracer).join();
    if (answer != 0) {
      throw new AssertionError("ptrace " + request + " on " + thread + " was refused");
    }
  }

  /** Lets it go on. */
  public void close() {
    ask(DETACH);
    tracer.shutdown();
  }
}
