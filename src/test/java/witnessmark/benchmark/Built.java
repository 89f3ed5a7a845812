package witnessmark.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import witnessmark.ledger.LedgerFiles;

/** The daemon of a built jar, as a process of its own; what it has told is on its disk. */
final class Built implements Subject {
  private final Path jar;
  private final Path config;
  private final LedgerFiles files;
  private final Client ear;
  private final AtomicLong told = new AtomicLong();
  private Process process;

  Built(Path jar, Path directory, String url, int fasteners) {
    this.jar = jar;
    files = Data.withJob(directory.resolve("data"), fasteners);
    config = Data.config(directory, "shop-1", url);
    ear = new Client(url, "ear");
    ear.onMessage(m -> told.incrementAndGet());
    ear.connect();
    ear.subscribe(answers());
  }

  /** Starts the jar's daemon, and does not wait for it. */
  static Process run(Path jar, Path config, LedgerFiles files) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(System.getProperty("benchmark.java", "").strip().split(" +")));
    command.removeIf(String::isEmpty);
    command.addAll(List.of("-jar", jar.toString(), "run"));
    command.addAll(List.of("--config", config.toString()));
    command.addAll(List.of("--data", files.directory().toString()));
    try {
      return new ProcessBuilder(command).redirectErrorStream(true).start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits until the daemon says that it listens; when that was. */
  static long listening(Process process) {
    BufferedReader lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    StringBuilder said = new StringBuilder();
    try {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.contains("listening")) {
          return System.nanoTime();
        }
        said.append(line).append('\n');
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    throw new IllegalStateException("the daemon ended: " + said);
  }

  @Override
  public String answers() {
    return Daemon.ANSWERS;
  }

  @Override
  public void start() {
    process = run(jar, config, files);
    listening(process);
  }

  /** As many as it has told. */
  @Override
  public long durable() {
    return told.get();
  }

  @Override
  public void close() {
    try {
      process.destroy();
      process.waitFor(20, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    ear.close();
  }
}
