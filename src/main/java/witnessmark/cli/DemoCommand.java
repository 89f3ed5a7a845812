package witnessmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.demo.Demo;

/** One whole job with nothing but this program. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Run one whole job with nothing but this program: an embedded broker, the bridge, and the",
      "wrench simulator making realistic mistakes. Everything in it is invented."
    },
    footer = {"", "Example:  witnessmark demo --fast --keep ./demo"})
final class DemoCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--fast", description = "Do not wait between bolts.")
  private boolean fast;

  @Option(names = "--seed", defaultValue = "1", description = "The same seed, the same story.")
  private long seed;

  @Option(names = "--keep", paramLabel = "DIR", description = "Keep the data in a new directory.")
  private Path keep;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    Path directory = directory();
    try {
      out.println(
          "A rear-axle module for an adaptive tricycle, assembled on bench-1. All of it is invented.");
      out.println("Torque is not clamp load, and a record does not make a joint safe: the maker's");
      out.println("service instructions, local codes and qualified persons decide.");
      out.println();
      out.flush();
      String job = new Demo(directory, out, fast, seed, Simulator::start).run();
      String data = directory.resolve("data").toString();
      show(out, "job", "status", job, "--data", data);
      show(out, "trace", "--unit", Demo.UNIT, "--data", data);
      show(out, "ledger", "checkpoint", "--data", data);
      return show(out, "ledger", "verify", "--data", data);
    } catch (IOException e) {
      throw new Refusal(Exit.SURROUNDINGS, "The demo cannot go on: " + e.getMessage());
    } finally {
      if (keep == null) {
        delete(directory);
      } else {
        out.println(
            "\nThe data are kept in "
                + directory
                + "; look around with --data "
                + directory.resolve("data")
                + ".");
        out.flush();
      }
    }
  }

  private static int show(PrintWriter out, String... command) {
    out.println("\n$ witnessmark " + String.join(" ", command));
    out.flush();
    return Main.execute(command);
  }

  private Path directory() throws IOException {
    if (keep == null) {
      return java.nio.file.Files.createTempDirectory("witnessmark-demo");
    }
    if (java.nio.file.Files.exists(keep)) {
      throw new Refusal(Exit.SURROUNDINGS, keep + " exists already; name a new directory.");
    }
    return java.nio.file.Files.createDirectories(keep);
  }

  private static void delete(Path directory) throws IOException {
    try (Stream<Path> files = java.nio.file.Files.walk(directory)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        java.nio.file.Files.deleteIfExists(file);
      }
    }
  }
}
