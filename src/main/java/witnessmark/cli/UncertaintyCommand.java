package witnessmark.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.torque.Digits;
import witnessmark.wrench.Budget;

/** Joins the contributions to the uncertainty of a calibration. */
@Command(
    name = "uncertainty",
    mixinStandardHelpOptions = true,
    description = {
      "Join the contributions to the uncertainty of the shop's own calibration, all in %% of the",
      "reading. The formula is that of ISO 6789-2 from memory: the standard in hand goes before it."
    },
    footer = {
      "",
      "Example:  witnessmark wrench uncertainty --device 0.5 --resolution 0.12 \\",
      "            --reproducibility 0.4 --repeatability 0.25"
    })
final class UncertaintyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--device", required = true, description = "Measuring device, expanded, k = 2.")
  private String device;

  @Option(names = "--resolution", defaultValue = "0", description = "Spread of the resolution.")
  private String resolution;

  @Option(
      names = "--reproducibility",
      defaultValue = "0",
      description = "Spread between repeated mountings.")
  private String reproducibility;

  @Option(
      names = "--drive",
      defaultValue = "0",
      description = "Spread between positions of the output drive.")
  private String drive;

  @Option(names = "--interface", defaultValue = "0", description = "Spread between interfaces.")
  private String interfaces;

  @Option(
      names = "--loading",
      defaultValue = "0",
      description = "Spread between loading points of the grip.")
  private String loading;

  @Option(
      names = "--repeatability",
      required = true,
      description = "Standard deviation of the mean of the readings.")
  private String repeatability;

  @Override
  public Integer call() {
    Budget budget =
        Given.valid(
            spec,
            () ->
                new Budget(
                    percent(device),
                    percent(resolution),
                    percent(reproducibility),
                    percent(drive),
                    percent(interfaces),
                    percent(loading),
                    percent(repeatability)));
    PrintWriter out = spec.commandLine().getOut();
    out.println("Standard uncertainty w " + rounded(budget.standard()) + " %.");
    out.println("Expanded uncertainty W " + rounded(budget.expanded()) + " %, k = 2.");
    out.flush();
    return Exit.YES;
  }

  private static BigDecimal percent(String text) {
    return new Digits(text).value();
  }

  private static String rounded(BigDecimal percent) {
    return percent.setScale(4, RoundingMode.HALF_EVEN).toPlainString();
  }
}
