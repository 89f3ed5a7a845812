package witnessmark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The simulator as a process of its own. */
final class Simulator {
  private static final String MAIN = "wrenchsim.Main";

  private Simulator() {}

  static ProcessBuilder start(List<String> arguments) {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xshare:auto"));
    line.add("-Dwrenchsim.name=witnessmark simulate");
    line.addAll(List.of("-cp", System.getProperty("java.class.path"), MAIN));
    line.addAll(arguments);
    return new ProcessBuilder(line);
  }
}
