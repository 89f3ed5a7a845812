package witnessmark.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The page of a run. */
final class Page {
  private Page() {}

  static List<String> of(List<Tally> tallies, long seed, long seconds, int threads) {
    long inputs = tallies.stream().mapToLong(Tally::inputs).sum();
    long bytes = tallies.stream().mapToLong(Tally::bytes).sum();
    long faults = tallies.stream().mapToLong(t -> t.faults().size()).sum();
    List<String> lines = new ArrayList<>(Words.HEAD);
    lines.add("## The run");
    lines.add("");
    lines.add(
        String.format(
            Locale.ROOT,
            "%,d inputs, %,d MB, seed %d, in %d minutes on %d threads of Java %s. Faults found: %d.",
            inputs,
            bytes / 1_000_000,
            seed,
            (seconds + 59) / 60,
            threads,
            System.getProperty("java.version"),
            faults));
    lines.add("");
    lines.add(
        "| parser | inputs | taken | kinds of answers | slowest, ms | (its bytes) | most memory, kB | (its bytes) | allowed, kB + bytes a byte | of that at most | faults |");
    lines.add("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    for (Tally t : tallies) {
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s | %,d | %,d | %,d | %.1f | %,d | %,d | %,d | %,d + %,d | %.0f %% | %d |",
              t.name(),
              t.inputs(),
              t.taken(),
              t.kinds(),
              t.slowest() / 1e6,
              t.slowestLength(),
              t.most() / 1024,
              t.mostLength(),
              t.allowance().constant() / 1024,
              t.allowance().each(),
              100 * t.fullest(),
              t.faults().size()));
    }
    lines.add("");
    tallies.forEach(
        t -> t.faults().forEach(f -> lines.add("- " + f.target() + ": " + f.what() + ".")));
    return lines;
  }
}
