package witnessmark.benchmark;

import java.nio.file.Path;
import java.util.List;

/** Runs the measurements, or those that are named. */
public final class Main {
  private static final List<String> ALL = List.of("decisions", "throughput", "latency", "start-up");

  private Main() {}

  /**
   * @param args the number of rounds (default 5), then what to measure (default everything)
   */
  public static void main(String[] args) {
    int rounds = args.length == 0 ? 5 : Integer.parseInt(args[0]);
    List<String> chosen = args.length < 2 ? ALL : List.of(args).subList(1, args.length);
    if (!ALL.containsAll(chosen)) {
      throw new IllegalArgumentException("measurements are " + ALL + ", not " + chosen);
    }
    Path directory = Path.of("target", "benchmark");
    Directories.delete(directory);
    System.out.printf(
        "Java %s, %s %s, %d processors; medians of %d rounds (least to most)%n",
        Runtime.version(),
        System.getProperty("os.name"),
        System.getProperty("os.version"),
        Runtime.getRuntime().availableProcessors(),
        rounds);
    if (chosen.contains("decisions")) {
      Decisions.run(rounds);
      LogSize.run(directory, rounds);
    }
    if (chosen.contains("throughput")) {
      Throughput.run(directory, rounds);
    }
    if (chosen.contains("latency")) {
      Latency.run(directory, rounds);
    }
    if (chosen.contains("start-up")) {
      StartUp.run(directory, rounds);
    }
    Directories.delete(directory);
  }
}
