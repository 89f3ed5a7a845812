package witnessmark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Unmatched;

/** Starts the wrench simulator, a program of its own that knows the bridge by its messages only. */
@Command(
    name = "simulate",
    description = {
      "Run the wrench simulator: to a broker, to a serial port, or to a virtual serial line.",
      "See: witnessmark simulate --help"
    },
    footer = {"", "Example:  witnessmark simulate shop --station bench-1 --wrench TW-0417,max=100"})
final class SimulateCommand implements Callable<Integer> {
  /** All of it is the simulator's own: this program reads none of it. */
  @Unmatched private List<String> arguments = new ArrayList<>();

  @Override
  public Integer call() throws Exception {
    Process process = Simulator.start(arguments).inheritIO().start();
    Runtime.getRuntime().addShutdownHook(new Thread(process::destroy));
    return process.waitFor();
  }
}
