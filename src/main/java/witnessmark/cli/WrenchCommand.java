package witnessmark.cli;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.InForce;
import witnessmark.cli.answer.Json;
import witnessmark.desk.EnrolWrench;
import witnessmark.entry.Source;
import witnessmark.report.Table;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Wrench;

/** The register of wrenches. */
@Command(
    name = "wrench",
    mixinStandardHelpOptions = true,
    description = "Enrol wrenches, enter their calibrations and checks, and list them.",
    subcommands = {
      BindCommand.class,
      CalibrateCommand.class,
      WrenchCheckCommand.class,
      ChecksCommand.class,
      DueCommand.class,
      RetireCommand.class,
      RuleCommand.class,
      UncertaintyCommand.class
    },
    footer = {"", "Example:  witnessmark wrench list"})
final class WrenchCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "enrol",
      mixinStandardHelpOptions = true,
      description = {
        "Make a wrench known, with its range and its calibration; or renew that.",
        "Readings of a wrench that is not enrolled are recorded and never accept a fastener."
      },
      footer = {
        "",
        "Example:  witnessmark wrench enrol TW-0417 --max \"100 N.m\" --calibrated 2026-09-01 \\",
        "            --due 2027-09-01 --certificate C-26-118"
      })
  int enrol(
      @Parameters(paramLabel = "SERIAL") String serial,
      @Option(names = "--max", required = true, description = "Upper end, e.g. \"100 N.m\".")
          String max,
      @Option(names = "--min", description = "Lower end (default: 20 %% of the upper end).")
          String min,
      @Option(names = "--calibrated", required = true, description = "Date, e.g. 2026-09-01.")
          LocalDate calibrated,
      @Option(names = "--due", description = "Next calibration (default: a year later).")
          LocalDate due,
      @Option(names = "--certificate", description = "The certificate's number.")
          String certificate,
      @Option(names = "--uncertainty", description = "Expanded, %% of reading, k = 2.")
          String uncertainty,
      @Option(names = "--resolution", description = "Smallest step, e.g. \"0.01 N.m\".")
          String resolution,
      @Option(
              names = "--kind",
              defaultValue = "indicating",
              description = "indicating (default) or setting: ISO 6789's types I and II.")
          String kind,
      @Option(names = "--no-angle", description = "It reports no angle.") boolean noAngle,
      @Mixin ByOption by,
      @Mixin SignOption sign,
      @Mixin DataOption data) {
    EnrolWrench command =
        Given.valid(
            spec,
            () -> {
              Torque high = Torque.parse(max);
              return new EnrolWrench(
                  serial,
                  min == null ? fifth(high) : Torque.parse(min),
                  high,
                  start(calibrated),
                  start(due == null ? calibrated.plusYears(1) : due),
                  Optional.ofNullable(certificate),
                  Optional.ofNullable(uncertainty).map(Digits::new),
                  Optional.ofNullable(resolution).map(Torque::parse),
                  WrenchKind.of(kind),
                  !noAngle,
                  by.badge());
            });
    Optional<Wrench> before =
        Optional.ofNullable(data.shop().wrenches().get(serial)).map(Enrolments::newest);
    long n = data.carryOut(command, sign);
    before
        .filter(b -> b.calibrated().isAfter(command.calibrated()))
        .ifPresent(
            b ->
                out(
                    "This replaces the newer calibration of "
                        + day(b.calibrated())
                        + b.certificate().map(c -> ", certificate " + c).orElse("")
                        + "; was it meant to?"));
    out(
        "Enrolled "
            + serial
            + ", "
            + command.low()
            + " to "
            + command.high()
            + ", calibration in force until "
            + day(command.due())
            + " (entry "
            + n
            + ").");
    return Exit.YES;
  }

  @Command(
      name = "list",
      mixinStandardHelpOptions = true,
      description = "List the enrolled wrenches.",
      footer = {"", "Example:  witnessmark wrench list --json"})
  int list(@Mixin DataOption data, @Mixin JsonOption json) {
    var register = data.shop().wrenches();
    List<Wrench> wrenches = register.values().stream().map(Enrolments::newest).toList();
    if (json.wanted()) {
      json.print(
          spec.commandLine().getOut(),
          wrenches.stream()
              .map(
                  w ->
                      Json.object(
                          "wrench", w.serial(),
                          "low", w.low().toString(),
                          "high", w.high().toString(),
                          "calibrated", w.calibrated().toString(),
                          "due", w.due().toString(),
                          "certificate", w.certificate().orElse(null),
                          "uncertainty", w.uncertainty().map(Digits::text).orElse(null),
                          "resolution", w.resolution().map(Torque::toString).orElse(null),
                          "kind", w.kind().code(),
                          "angle", w.reportsAngle(),
                          "inforce", w.calibratedAt(Instant.now()),
                          "sources",
                              register.get(w.serial()).sources().stream()
                                  .map(Source::toString)
                                  .toList()))
              .toList());
      return Exit.YES;
    }
    InForce force = data.reading(InForce::of);
    Table table =
        new Table("WRENCH", "FROM", "TO", "CALIBRATED", "DUE", "CERTIFICATE", "REPORTS", "");
    wrenches.forEach(
        w ->
            table.add(
                w.serial(),
                w.low().toString(),
                w.high().toString(),
                day(w.calibrated()),
                day(w.due()),
                w.certificate().orElse("-"),
                reports(register.get(w.serial())),
                force.of(w, Instant.now())));
    out(
        table.isEmpty()
            ? "No wrench is enrolled yet. Enrol one: witnessmark wrench enrol --help"
            : table.toString().stripTrailing());
    return Exit.YES;
  }

  private static String reports(Enrolments enrolled) {
    return enrolled.sources().isEmpty()
        ? "anywhere"
        : enrolled.sources().stream().map(Source::toString).collect(Collectors.joining(", "));
  }

  private static Torque fifth(Torque high) {
    BigDecimal low = high.digits().value().multiply(new BigDecimal("0.2"));
    return Torque.of(low.stripTrailingZeros().toPlainString(), high.unit());
  }

  private static Instant start(LocalDate day) {
    return day.atStartOfDay(ZoneOffset.UTC).toInstant();
  }

  private static String day(Instant moment) {
    return moment.atZone(ZoneOffset.UTC).toLocalDate().toString();
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
