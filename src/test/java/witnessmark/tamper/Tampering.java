package witnessmark.tamper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import witnessmark.tamper.Examiner.Outcome;

/**
 * Edits a log at random and tells what reveals it: {@code Tampering EDITS SEED [PAGE]}. Exit status
 * 1 when something goes unrevealed.
 */
final class Tampering {
  private Tampering() {}

  public static void main(String[] args) throws IOException {
    int edits = Integer.parseInt(args[0]);
    long seed = Long.parseLong(args[1]);
    Path directory = Files.createTempDirectory("tampering");
    List<Count> counts = run(directory, edits, seed);
    delete(directory);
    List<String> page = TamperPage.of(counts, edits, seed);
    page.forEach(System.out::println);
    if (args.length > 2 && !args[2].isEmpty()) {
      Files.write(Path.of(args[2]), page);
    }
    System.exit(counts.stream().allMatch(c -> c.unrevealed().isEmpty()) ? 0 : 1);
  }

  /** Each kind gets its part of the edits, at least one; each edit is of a copy of its own. */
  static List<Count> run(Path directory, int edits, long seed) throws IOException {
    System.out.println("seed " + seed);
    Victim closed = Victim.closed(directory.resolve("closed"), seed);
    Victim killed = Victim.killed(directory.resolve("killed"), seed);
    List<Kind> kinds = new ArrayList<>(FileEdits.all());
    kinds.addAll(RowEdits.all());
    kinds.addAll(SchemaEdits.all());
    kinds.addAll(new Rewrites(closed).all());
    int weights = kinds.stream().mapToInt(Kind::weight).sum();
    List<Count> counts = new ArrayList<>();
    int edit = 0;
    for (Kind kind : kinds) {
      Count count = new Count(kind);
      Victim victim = kind.afterKill() ? killed : closed;
      int part = (edits * kind.weight() + weights - 1) / weights;
      for (int i = 0; i < part; i++, edit++) {
        Path place = directory.resolve("copy");
        Copy copy = victim.copyTo(place);
        kind.change().of(copy, new Random(seed * 1_000_003 + edit));
        Outcome outcome = victim.examiner().outcome(copy);
        count.add(edit, outcome);
        if (outcome == Outcome.UNREVEALED) {
          System.out.println("UNREVEALED: edit " + edit + ", " + kind.name());
        }
        delete(place);
      }
      counts.add(count);
    }
    return counts;
  }

  private static void delete(Path directory) throws IOException {
    try (Stream<Path> files = Files.walk(directory)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
