package witnessmark.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicLong;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.PointText;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.Tried;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.ledger.Reading.Query;
import witnessmark.torque.Digits;
import witnessmark.wrench.Budget;

/** Enters a laboratory's certificate. */
@Command(
    name = "calibrate",
    mixinStandardHelpOptions = true,
    description = {
      "Enter a calibration: how the wrench came in, how it went out, and for how long.",
      "Each point is what the wrench showed, a colon, and what the reference measured.",
      "Exit status 1 when the wrench went out, or came in, beyond the permissible deviation."
    },
    footer = {
      "",
      "Example:  witnessmark wrench calibrate TW-0417 --certificate C-26-140 \\",
      "            --laboratory \"calibration room\" --date 2026-11-20 --uncertainty 1.0 \\",
      "            --found \"20 N.m: 20.9 20.8 20.9 20.8 20.9\" --left \"20 N.m: 20.1 20.0 20.1 20.0 20.1\" \\",
      "            --left \"60 N.m: 60.2 60.1 60.2 60.0 60.1\" --left \"100 N.m: 100.1 99.9 100.2 100.0 100.1\""
    })
final class CalibrateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SERIAL")
  private String serial;

  @Option(names = "--certificate", required = true, description = "The certificate's number.")
  private String certificate;

  @Option(names = "--laboratory", required = true, description = "Who issued it.")
  private String laboratory;

  @Option(names = "--date", required = true, description = "Of the calibration, e.g. 2026-11-20.")
  private LocalDate date;

  @Option(names = "--due", description = "Next calibration (default: by the type's rule).")
  private LocalDate due;

  @Option(names = "--operations", description = "Due after so many (default: by the type's rule).")
  private Long operations;

  @Option(names = "--uncertainty", required = true, description = "Expanded, %% of reading, k = 2.")
  private String uncertainty;

  @Option(names = "--found", description = "A point as found, before any adjustment; repeatable.")
  private List<String> found = List.of();

  @Option(names = "--left", description = "A point as left; repeatable.")
  private List<String> left = List.of();

  @Option(names = "--not-adjusted", description = "As left is as found.")
  private boolean notAdjusted;

  @Mixin private ByOption by;
  @Mixin private SignOption sign;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    Instant calibrated = start(date);
    long used = data.reading(r -> used(r, calibrated));
    CalibrateWrench command = Given.valid(spec, () -> command(calibrated, used));
    long n = data.carryOut(command, sign);
    Entry.WrenchCalibrated entry =
        data.reading(
            r -> (Entry.WrenchCalibrated) EntryJson.read(r.entry(n).orElseThrow().bytes()));
    return tell(n, entry);
  }

  private CalibrateWrench command(Instant calibrated, long used) {
    if (notAdjusted != left.isEmpty()) {
      throw new IllegalArgumentException(
          "give the points as left (--left), or --not-adjusted where they are as found");
    }
    List<Tried> in = found.stream().map(PointText::read).toList();
    return new CalibrateWrench(
        serial,
        certificate,
        laboratory,
        calibrated,
        Optional.ofNullable(due).map(CalibrateCommand::start),
        Optional.ofNullable(operations),
        used,
        new Digits(uncertainty),
        in,
        notAdjusted ? in : left.stream().map(PointText::read).toList(),
        by.badge());
  }

  private long used(witnessmark.ledger.Reading reading, Instant since) {
    Optional<String> any = Optional.empty();
    AtomicLong count = new AtomicLong();
    reading.find(
        new Query(
            any,
            any,
            any,
            any,
            Optional.of(serial),
            any,
            any,
            Optional.of("torque"),
            any,
            Optional.of(Moments.text(since)),
            any),
        s -> count.incrementAndGet());
    return count.get();
  }

  private int tell(long n, Entry.WrenchCalibrated e) {
    PrintWriter out = spec.commandLine().getOut();
    e.found().forEach(p -> out.println("As found, " + PointText.of(p)));
    e.left().forEach(p -> out.println("As left,  " + PointText.of(p) + interval(p, e)));
    boolean spent = e.used() >= e.operations();
    if (e.leftWithin() && spent) {
      out.println(
          "Calibrated "
              + e.wrench()
              + ", but the "
              + e.operations()
              + " operations that this is good for are used already ("
              + e.used()
              + " since): it is not in force (entry "
              + n
              + "). Have it calibrated, or do not use it.");
    } else if (e.leftWithin()) {
      out.println(
          "Calibrated "
              + e.wrench()
              + ", in force until "
              + e.due().atZone(ZoneOffset.UTC).toLocalDate()
              + " or for "
              + e.operations()
              + " operations, of which "
              + e.used()
              + " are used (entry "
              + n
              + ").");
    } else {
      out.println(
          "Left out of tolerance: "
              + e.wrench()
              + " has no calibration in force from "
              + e.calibrated().atZone(ZoneOffset.UTC).toLocalDate()
              + " (entry "
              + n
              + "). Do not use it.");
    }
    boolean foundOut = e.foundWithin().filter(w -> !w).isPresent();
    if (foundOut) {
      out.println("Found out of tolerance: see what it touched with  recall " + e.wrench());
    }
    out.flush();
    return e.leftWithin() && !spent && !foundOut ? Exit.YES : Exit.NO;
  }

  /** How far off a reading there may be, by what the certificate says. */
  private static String interval(CalibrationPoint point, Entry.WrenchCalibrated e) {
    BigDecimal most = Budget.interval(point, BigDecimal.ZERO, e.uncertainty().value());
    return ", with the uncertainty "
        + most.setScale(2, RoundingMode.HALF_EVEN).toPlainString()
        + " % at most";
  }

  private static Instant start(LocalDate day) {
    return day.atStartOfDay(ZoneOffset.UTC).toInstant();
  }
}
