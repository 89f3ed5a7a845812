package witnessmark.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import witnessmark.certificate.CertificateTarget;
import witnessmark.decode.DecodeTargets;
import witnessmark.ledger.verify.ProofTargets;
import witnessmark.scan.ScanTarget;

/**
 * Gives every parser that meets bytes from outside its share of inputs: {@code Fuzz INPUTS SEED
 * [PAGE]}. Exit status 1 when one did not stand them.
 */
final class Fuzz {
  private static final Path FOUND = Path.of("target/fuzz");

  private Fuzz() {}

  static List<Target<?>> targets() {
    List<Target<?>> targets = new ArrayList<>();
    targets.addAll(TomlTargets.all());
    targets.addAll(ProofTargets.all());
    targets.add(new CertificateTarget());
    targets.addAll(DecodeTargets.all());
    targets.add(new ScanTarget());
    return targets;
  }

  public static void main(String[] args) throws Exception {
    long inputs = Long.parseLong(args[0]);
    long seed = Long.parseLong(args[1]);
    long began = System.nanoTime();
    int threads = Math.min(2, Runtime.getRuntime().availableProcessors());
    List<Tally> tallies = run(inputs, seed, threads);
    long seconds = (System.nanoTime() - began) / 1_000_000_000;
    List<String> page = Page.of(tallies, seed, seconds, threads);
    page.forEach(System.out::println);
    if (args.length > 2 && !args[2].isEmpty()) {
      Files.write(Path.of(args[2]), page);
    }
    System.exit(tallies.stream().allMatch(t -> t.faults().isEmpty()) ? 0 : 1);
  }

  /** The parsers one after the other, so many at a time; what is found goes to target/fuzz. */
  static List<Tally> run(long inputs, long seed, int threads)
      throws InterruptedException, IOException {
    System.out.println("seed " + seed);
    String only = System.getProperty("fuzz.only", "");
    List<Target<?>> targets = targets().stream().filter(t -> t.name().contains(only)).toList();
    int shares = targets.stream().mapToInt(Target::share).sum();
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<Tally>> running = new ArrayList<>();
      for (Target<?> target : targets) {
        long count = (inputs * target.share() + shares - 1) / shares;
        running.add(pool.submit(() -> new Worker<>(target, count, seed, new Watchdog()).run()));
      }
      List<Tally> tallies = new ArrayList<>();
      for (Future<Tally> each : running) {
        tallies.add(each.get());
      }
      for (Tally tally : tallies) {
        keep(tally);
      }
      return tallies;
    } catch (ExecutionException e) {
      throw new IllegalStateException("the run itself failed, seed " + seed, e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static void keep(Tally tally) throws IOException {
    int n = 0;
    for (Fault fault : tally.faults()) {
      Files.createDirectories(FOUND);
      String name = fault.target().replaceAll("[^A-Za-z]+", "-").toLowerCase(Locale.ROOT);
      Path file = FOUND.resolve(name + "-" + ++n + ".hex");
      Files.writeString(file, HexFormat.of().formatHex(fault.input()) + "\n");
      System.out.println(fault.target() + ": " + fault.what() + ": " + file);
    }
  }
}
