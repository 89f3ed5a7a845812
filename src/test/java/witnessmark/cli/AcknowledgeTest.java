package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class AcknowledgeTest {
  private static final String STEP =
      "[[step]]\nid = \"%s\"\nkind = \"tighten\"\ntitle = \"T\"\nfasteners = 1\n"
          + "torque = \"20 N.m\"\ntolerance = \"40 %%\"\n";
  private static final String KEY = "band-wide@a=wide as the maker has it";

  @TempDir private Path directory;
  private String file;
  private String data;

  private record Said(int status, String out, String err) {}

  private static Said say(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err, true));
    return new Said(line.execute(arguments), out.toString(), err.toString());
  }

  @BeforeEach
  void begin() throws IOException {
    String head = "[procedure]\nid = \"P-1\"\nrevision = \"A\"\ntitle = \"T\"\n";
    String text = head + String.format(STEP, "a") + String.format(STEP, "b");
    file = Files.writeString(directory.resolve("p.toml"), text).toString();
    data = "--data=" + directory.resolve("data");
    say("ledger", "create", data);
    say("operator", "enrol", "badge-07", data);
  }

  @Test
  void aReleaseKeepsWhatWasAcknowledgedAndPrintsWhatWasNot() throws IOException {
    Said released = say("procedure", "release", file, "--acknowledge", KEY, "--by=badge-07", data);
    assertThat(released)
        .isEqualTo(
            new Said(
                0,
                "doubtful, not acknowledged: band-wide@b: pass \"final\" allows 12 to 28 N.m, wider"
                    + " than ±30 %: is that meant?\nReleased P-1 revision A (entry 2).\n",
                ""));
    ObjectMapper json = new ObjectMapper();
    JsonNode expected =
        json.readTree("[{\"finding\":\"band-wide@a\",\"because\":\"wide as the maker has it\"}]");
    assertThat(json.readTree(say("procedure", "list", "--json", data).out()).at("/0/acknowledged"))
        .isEqualTo(expected);
    JsonNode shown = json.readTree(say("procedure", "show", "P-1", "--json", data).out());
    assertThat(shown.at("/acknowledged")).isEqualTo(expected);
    assertThat(shown.at("/text").asText()).isEqualTo(Files.readString(Path.of(file)));
    assertThat(say("procedure", "show", "P-1", data).out())
        .isEqualTo(Files.readString(Path.of(file)));
    assertThat(say("trace", "--kind=procedure-released", data).out())
        .contains("Acknowledged band-wide@a: wide as the maker has it.");
  }

  @Test
  void aReleaseWithoutAcknowledgementsIsNotStopped() {
    Said released = say("procedure", "release", file, data);
    assertThat(released.status()).isZero();
    assertThat(released.out())
        .contains("doubtful, not acknowledged: band-wide@a: ")
        .endsWith("Released P-1 revision A (entry 2).\n");
  }

  @Test
  void whatIsNoFindingOrHasNoBadgeIsDeclined() {
    assertThat(say("procedure", "release", file, "--acknowledge", KEY, data))
        .isEqualTo(
            new Said(1, "", "Who acknowledges a finding answers for it: give a badge (--by).\n"));
    assertThat(
            say(
                "procedure",
                "release",
                file,
                "--acknowledge",
                "band-narrow@a=x",
                "--by=badge-07",
                data))
        .isEqualTo(
            new Said(
                1,
                "",
                "Procedure P-1 has no finding \"band-narrow@a\" to acknowledge; name one of"
                    + " band-wide@a, band-wide@b.\n"));
  }
}
