package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Json;
import witnessmark.bench.Program;

/** Calibrations, checks and the due list, by the real program. */
class CalibrationIT {
  private static final String[] LEFT = {
    "--left", "20 N.m: 20.1 20.0 20.1 20.0 20.1",
    "--left", "60 N.m: 60.2 60.1 60.2 60.0 60.1",
    "--left", "100 N.m: 100.1 99.9 100.2 100.0 100.1"
  };

  @TempDir private Path directory;
  private Program program;

  @BeforeEach
  void begin() {
    program = new Program(directory);
    program.run("ledger", "create").orThrow();
    program.run("operator", "enrol", "badge-07").orThrow();
    program
        .run("wrench", "enrol", "TW-0417", "--max", "100 N.m", "--calibrated", "2026-01-02")
        .orThrow();
  }

  private Program.Ended calibrate(String... more) {
    String[] first = {
      "wrench",
      "calibrate",
      "TW-0417",
      "--certificate",
      "C-26-140",
      "--laboratory",
      "calibration room",
      "--date",
      "2026-06-01",
      "--due",
      "2099-06-01",
      "--uncertainty",
      "1.0"
    };
    String[] line = java.util.Arrays.copyOf(first, first.length + more.length);
    System.arraycopy(more, 0, line, first.length, more.length);
    return program.run(line);
  }

  @Test
  void aCalibrationIsToldAndListedAsDue() {
    Program.Ended done = calibrate(LEFT);
    assertThat(done.status()).as(done.err()).isZero();
    assertThat(done.out())
        .contains("As left,  at 20 N.m: mean deviation -0.30 %, 4 % permissible")
        .contains(
            "Calibrated TW-0417, in force until 2099-06-01 or for 5000 operations, of which 0 are"
                + " used (entry 3).");
    Program.Ended due = program.run("wrench", "due", "--json");
    assertThat(due.status()).isZero();
    assertThat(Json.of(due.out()).get(0).path("operations").longValue()).isEqualTo(5000);
    assertThat(program.run("ledger", "verify").out()).startsWith("Verified: 4 entries");
    assertThat(program.run("trace", "--wrench", "TW-0417").out())
        .contains("Calibrated by calibration room, certificate C-26-140");
  }

  @Test
  void aWrenchFoundOutOfToleranceIsToldWithWhatToDoNext() {
    Program.Ended done =
        calibrate(
            java.util.stream.Stream.concat(
                    java.util.stream.Stream.of("--found", "60 N.m: 57 57 57 57 57"),
                    java.util.Arrays.stream(LEFT))
                .toArray(String[]::new));
    assertThat(done.status()).isEqualTo(1);
    assertThat(done.out())
        .contains("As found, at 60 N.m: mean deviation +5.26 %, 4 % permissible: OUT OF TOLERANCE")
        .contains("recall TW-0417");
  }

  @Test
  void aCheckThatFailsTakesTheWrenchOutOfUse() {
    calibrate(LEFT).orThrow();
    Program.Ended failed =
        program.run(
            "wrench",
            "check",
            "TW-0417",
            "--tester",
            "tester-1",
            "--by",
            "badge-07",
            "--point",
            "60 N.m: 57.0");
    assertThat(failed.status()).isEqualTo(1);
    assertThat(failed.out()).contains("is out of tolerance and has no calibration in force");
    Program.Ended due = program.run("wrench", "due");
    assertThat(due.status()).isEqualTo(1);
    assertThat(due.out()).contains("NOT IN FORCE");
  }

  @Test
  void aRuleThatTheShopMadeHoldsForTheNextCalibration() {
    assertThat(program.run("wrench", "rule", "indicating").out())
        .contains("from memory of ISO 6789");
    program.run("wrench", "rule", "indicating", "--readings", "6").orThrow();
    Program.Ended declined = calibrate(LEFT);
    assertThat(declined.status()).isEqualTo(1);
    assertThat(declined.err()).contains("Point 20 N.m has 5 readings");
  }

  @Test
  void aPointThatIsNoneIsSaidToBeNone() {
    Program.Ended wrong = calibrate("--left", "20 N.m 20.1");
    assertThat(wrong.status()).isEqualTo(2);
    assertThat(wrong.err()).contains("\"20 N.m 20.1\" is no point; write what the wrench showed");
    assertThat(calibrate().err()).contains("--not-adjusted");
  }

  @Test
  void checksThatDriftAreWarnedOfBeforeTheLimitIsReached() {
    calibrate(LEFT).orThrow();
    for (String reference : "59.9 59.6 59.3 59.1 58.8 58.5 58.2".split(" ")) {
      program
          .run(
              "wrench",
              "check",
              "TW-0417",
              "--tester",
              "tester-1",
              "--by",
              "badge-07",
              "--point",
              "60 N.m: " + reference)
          .orThrow();
    }
    Program.Ended chart = program.run("wrench", "checks", "TW-0417");
    assertThat(chart.status()).isEqualTo(1);
    assertThat(chart.out())
        .contains("At 60 N.m: 7 checks since the newest calibration; mean +1.61 %")
        .contains("Warning: It drifts by +0.4")
        .contains("it reaches +4 % in about ");
    Program.Ended unknown = program.run("wrench", "checks", "TW-0999");
    assertThat(unknown.status()).isEqualTo(2);
    assertThat(unknown.err()).startsWith("No wrench \"TW-0999\" is enrolled");
  }
}
