package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.DoctorText;
import witnessmark.config.BridgeConfig;
import witnessmark.doctor.Doctor;
import witnessmark.doctor.Finding;
import witnessmark.doctor.Mark;
import witnessmark.ledger.LedgerFiles;

/** Says what is wrong with a bridge and its surroundings. */
@Command(
    name = "doctor",
    mixinStandardHelpOptions = true,
    description = {
      "Look over the configuration, the data directory, the log, the key, the clock, the brokers,",
      "the ports and the wrenches, and say what is wrong and what to do next. Changes nothing, and",
      "may be run while the daemon runs. Exit status 1 when something is to be mended."
    },
    footer = {"", "Example:  witnessmark doctor --config shop.toml"})
final class DoctorCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--config", paramLabel = "FILE", description = "The daemon's configuration.")
  private Path config;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description =
          "The data directory (default: $WITNESSMARK_DATA, else the configuration's"
              + " data, else ./witnessmark-data).")
  private Path data;

  @Option(names = "--whole", description = "Verify every entry of the log, too.")
  private boolean whole;

  @Mixin private JsonOption json;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    List<Finding> found = new ArrayList<>();
    DoctorText text = new DoctorText(out);
    look(
        new Doctor(
            finding -> {
              found.add(finding);
              if (!json.wanted()) {
                text.print(finding);
              }
            }));
    if (json.wanted()) {
      json.print(out, found.stream().map(DoctorText::object).toList());
    } else {
      text.end(found);
    }
    return found.stream().anyMatch(f -> f.mark() == Mark.BAD) ? Exit.NO : Exit.YES;
  }

  private void look(Doctor doctor) {
    doctor.program();
    Optional<BridgeConfig> settings =
        doctor.configuration(Optional.ofNullable(config), System.getenv());
    LedgerFiles files = new LedgerFiles(DataDirectory.of(data, settings, config));
    boolean known = data != null || System.getenv("WITNESSMARK_DATA") != null;
    if (config != null && settings.isEmpty() && !known && !files.exist()) {
      doctor.noDirectory();
      return;
    }
    doctor.log(files, whole);
    settings.ifPresent(s -> doctor.links(s, files));
  }
}
