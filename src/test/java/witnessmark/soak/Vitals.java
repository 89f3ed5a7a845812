package witnessmark.soak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A look at a process, in megabytes of 1,048,576 bytes.
 *
 * @param heapMb what its heap holds after a collection of everything
 * @param residentMb what it has in memory
 * @param files how many files, sockets and the like it has open
 * @param threads how many threads it has
 * @param logMb the log's file
 * @param walMb the log's file of what is not yet in its place
 */
record Vitals(
    double heapMb, double residentMb, int files, int threads, double logMb, double walMb) {
  private static final double MB = 1 << 20;
  private static final Pattern USED = Pattern.compile("used ([0-9]+)K");

  static Vitals of(long pid, Path data) throws IOException, InterruptedException {
    jcmd(pid, "GC.run");
    Path proc = Path.of("/proc", Long.toString(pid));
    return new Vitals(
        heap(jcmd(pid, "GC.heap_info")),
        status(proc, "VmRSS") / 1024.0,
        entries(proc.resolve("fd")),
        entries(proc.resolve("task")),
        Files.size(data.resolve("ledger.db")) / MB,
        Files.size(data.resolve("ledger.db-wal")) / MB);
  }

  /** The generations' lines come before that of the classes, which are not in the heap. */
  private static double heap(String info) {
    Matcher used = USED.matcher(info.substring(0, info.indexOf("Metaspace")));
    double sum = 0;
    while (used.find()) {
      sum += Long.parseLong(used.group(1)) / 1024.0;
    }
    return sum;
  }

  private static long status(Path proc, String name) throws IOException {
    try (Stream<String> lines = Files.lines(proc.resolve("status"))) {
      String line = lines.filter(l -> l.startsWith(name + ":")).findFirst().orElseThrow();
      return Long.parseLong(line.replaceAll("[^0-9]", ""));
    }
  }

  private static int entries(Path directory) throws IOException {
    try (Stream<Path> all = Files.list(directory)) {
      return (int) all.count();
    }
  }

  private static String jcmd(long pid, String command) throws IOException, InterruptedException {
    String program = Path.of(System.getProperty("java.home"), "bin", "jcmd").toString();
    Process process =
        new ProcessBuilder(program, Long.toString(pid), command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes());
    if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
      throw new IOException("jcmd " + command + " failed: " + said);
    }
    return said;
  }
}
