package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Json;
import witnessmark.bench.Program;

/** The register of wrenches, by the real program. */
class WrenchEnrolIT {
  @TempDir private Path directory;
  private Program program;

  @BeforeEach
  void begin() {
    program = new Program(directory);
    program.run("ledger", "create").orThrow();
  }

  @Test
  void theLowEndIsAFifthOfTheHighEndUnlessItIsGiven() {
    assertThat(
            program.run(
                "wrench", "enrol", "TW-1", "--max", "100 N.m", "--calibrated", "2026-01-02"))
        .satisfies(
            e -> assertThat(e.status()).as(e.err()).isZero(),
            e -> assertThat(e.out()).startsWith("Enrolled TW-1, 20 N.m to 100 N.m, "));
    JsonNode first = Json.of(program.run("wrench", "list", "--json").out()).get(0);
    assertThat(first.path("kind").textValue()).isEqualTo("indicating");
    assertThat(first.path("angle").booleanValue()).isTrue();
    assertThat(first.has("resolution")).isFalse();
  }

  @Test
  void whatIsKnownOfAWrenchIsOnRecord() {
    program
        .run(
            "wrench",
            "enrol",
            "TW-2",
            "--min",
            "5 N.m",
            "--max",
            "25 N.m",
            "--calibrated",
            "2026-01-02",
            "--uncertainty",
            "1.5",
            "--resolution",
            "0.01 N.m",
            "--kind",
            "setting",
            "--no-angle")
        .orThrow();
    JsonNode only = Json.of(program.run("wrench", "list", "--json").out()).get(0);
    assertThat(only.path("uncertainty").textValue()).isEqualTo("1.5");
    assertThat(only.path("resolution").textValue()).isEqualTo("0.01 N.m");
    assertThat(only.path("kind").textValue()).isEqualTo("setting");
    assertThat(only.path("angle").booleanValue()).isFalse();
    assertThat(program.run("explain", "1").out())
        .contains(", uncertainty 1.5 %, resolution 0.01 N.m, setting, reports no angle.");
  }

  @Test
  void aKindOrAResolutionThatIsNoneIsRefused() {
    assertThat(refused("--kind", "torque"))
        .startsWith("wrench kind \"torque\" is unknown; indicating or setting is allowed\n");
    assertThat(refused("--resolution", "0 N.m"))
        .startsWith("resolution 0 N.m is none; above 0 is allowed\n");
    assertThat(refused("--uncertainty", "0"))
        .startsWith("uncertainty 0 % is none; above 0 is allowed\n");
  }

  private String refused(String option, String value) {
    Program.Ended ended =
        program.run(
            "wrench",
            "enrol",
            "TW-3",
            "--max",
            "25 N.m",
            "--calibrated",
            "2026-01-02",
            option,
            value);
    assertThat(ended.status()).isEqualTo(2);
    return ended.err();
  }
}
