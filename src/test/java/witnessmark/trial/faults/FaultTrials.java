package witnessmark.trial.faults;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The fault trials: brings every fault on a real daemon and writes down what came of it. */
public final class FaultTrials {
  private FaultTrials() {}

  /**
   * Runs the trials and prints their page.
   *
   * @param args scale, part of a title that chooses faults (empty for all), and optionally the file
   *     to write the page to
   */
  public static void main(String[] args) throws Exception {
    int scale = Integer.parseInt(args[0]);
    Map<Fault, Row> rows = new LinkedHashMap<>();
    for (Fault fault : Faults.all()) {
      if (args.length < 2 || fault.title().contains(args[1])) {
        Row row = attempt(fault, scale);
        System.err.println(fault.title() + ": " + (row.broken().isEmpty() ? "holds" : row));
        rows.put(fault, row);
      }
    }
    List<String> page = FaultPage.of(rows, scale);
    page.forEach(System.out::println);
    if (args.length > 2 && !args[2].isEmpty()) {
      Files.write(Path.of(args[2]), page);
    }
    System.exit(rows.values().stream().allMatch(r -> r.broken().isEmpty()) ? 0 : 1);
  }

  /** What cannot be run to its end has broken its promise. */
  private static Row attempt(Fault fault, int scale) {
    try {
      return run(fault, scale);
    } catch (Exception | AssertionError e) { // whatever a process or a wait may throw
      String first = String.valueOf(e.getMessage()).lines().findFirst().orElse("");
      String why = "not run to its end: " + e.getClass().getSimpleName() + ", " + first;
      return new Row(Figures.NONE, List.of(), List.of(why));
    }
  }

  private static Row run(Fault fault, int scale) throws Exception {
    Path directory = Files.createTempDirectory(Path.of("target").toAbsolutePath(), "fault");
    Row row = fault.run(directory, scale);
    remove(directory);
    return row;
  }

  private static void remove(Path directory) throws IOException {
    try (Stream<Path> all = Files.walk(directory)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
