package witnessmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.demo.Demo;
import witnessmark.ledger.FileFault;

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
      Path data = directory.resolve("data");
      show(out, data, "The job:", "job", "status", job);
      show(out, data, "What happened:", "trace", "--unit", Demo.UNIT);
      show(out, data, "The unit's record:", "trace", "--unit", Demo.UNIT, "--record");
      Path pdf = directory.resolve(Demo.UNIT + ".pdf");
      show(
          out,
          data,
          "A certificate for the customer:",
          "trace",
          "--unit",
          Demo.UNIT,
          "--certificate",
          pdf.toString());
      told(
          out,
          "The certificate, checked as the customer would, without the log:",
          "ledger",
          "check-proof",
          pdf.toString(),
          "--key",
          data.resolve("ledger.pub").toString());
      show(out, data, "The signed checkpoint:", "ledger", "checkpoint");
      return show(out, data, "The log, checked:", "ledger", "verify");
    } catch (IOException e) {
      throw new Refusal(Exit.SURROUNDINGS, "The demo cannot go on: " + e.getMessage());
    } finally {
      if (keep == null) {
        delete(directory);
      }
      out.println("\n" + afterwards(directory));
      out.flush();
    }
  }

  private String afterwards(Path directory) {
    return keep == null
        ? "The data of this demo are gone. To look around in them, run it with --keep DIR."
        : "The data are kept in "
            + directory
            + "; look around with --data "
            + directory.resolve("data")
            + ".";
  }

  /** Runs a command on the demo's data; shows it as one to type only where the data stay. */
  private int show(PrintWriter out, Path data, String title, String... command) {
    String[] whole = Arrays.copyOf(command, command.length + 2);
    whole[command.length] = "--data";
    whole[command.length + 1] = data.toString();
    return told(out, title, whole);
  }

  private int told(PrintWriter out, String title, String... command) {
    out.println("\n" + (keep == null ? title : "$ witnessmark " + String.join(" ", command)));
    out.flush();
    return Main.execute(new Console(), command);
  }

  private Path directory() {
    if (keep != null && java.nio.file.Files.exists(keep)) {
      throw new Refusal(Exit.SURROUNDINGS, keep + " exists already; name a new directory.");
    }
    try {
      return keep == null
          ? java.nio.file.Files.createTempDirectory("witnessmark-demo")
          : java.nio.file.Files.createDirectories(keep);
    } catch (IOException e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          (keep == null ? "A directory for temporary files" : keep)
              + " cannot be made: "
              + FileFault.why(e)
              + ".\nName a new directory in a place where you may write with --keep.");
    }
  }

  private static void delete(Path directory) throws IOException {
    try (Stream<Path> files = java.nio.file.Files.walk(directory)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        java.nio.file.Files.deleteIfExists(file);
      }
    }
  }
}
