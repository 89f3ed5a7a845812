package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What is printed of a check is what programs get, in fewer words, whatever the procedure. */
class SightTextTest {
  private static final String DEMO = "demo-data/RAM-210.toml";

  @TempDir private Path directory;
  private final List<List<String>> checks = new ArrayList<>();

  private static String run(List<String> arguments, String... more) {
    StringWriter out = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(out, true));
    List<String> all = new ArrayList<>(arguments);
    all.addAll(List.of(more));
    assertThat(line.execute(all.toArray(String[]::new))).as(out.toString()).isZero();
    return out.toString();
  }

  private String file(String name, String... steps) throws IOException {
    String head = "[procedure]\nid = \"P\"\nrevision = \"A\"\ntitle = \"T\"\n";
    return Files.writeString(directory.resolve(name), head + String.join("", steps)).toString();
  }

  private static String step(String id, int fasteners, String lines) {
    return "[[step]]\nid = \""
        + id
        + "\"\nkind = \"tighten\"\ntitle = \"T\"\nfasteners = "
        + fasteners
        + "\n"
        + lines
        + "\n";
  }

  private static String pass(String name, int torque, String more) {
    return "[[step.pass]]\nname = \""
        + name
        + "\"\ntorque = \""
        + torque
        + " N.m\"\ntolerance = \"10 %\"\n"
        + more;
  }

  /** One of forty groups, with up to three passes, of which some are alike. */
  private static String one(int k) {
    String window = k % 3 == 0 ? "" : "angle-min = \"20\"\nangle-max = \"70\"\n";
    String passes = pass("snug", 20 + k % 5 * 7, "");
    passes += k % 3 == 0 ? "" : pass("final", 50 + k % 5 * 7, window);
    passes += k % 3 == 2 ? pass("check", 50 + k % 5 * 7, "check = true\n") : "";
    return step("group-number-" + k, 1 + k % 4, (k % 7 == 0 ? "after = []\n" : "") + passes);
  }

  @BeforeEach
  void begin() throws IOException {
    String lid = file("one.toml", step("lid", 1, pass("final", 50, "")));
    String forty =
        file(
            "forty.toml",
            IntStream.rangeClosed(1, 40).mapToObj(k -> one(k)).toArray(String[]::new));
    for (String shows : List.of("torque-only", "angle", "position", "breakaway")) {
      checks.add(List.of("procedure", "check", lid, "--wrench=T=" + shows));
      checks.add(List.of("procedure", "check", forty, "--wrench=T=" + shows));
      checks.add(
          List.of(
              "procedure", "check", DEMO, "--wrench=TW-0417=" + shows, "--wrench=TW-0502=angle"));
    }
    checks.add(List.of("procedure", "check", DEMO));
  }

  private static JsonNode mistakes(List<String> check) throws IOException {
    return new ObjectMapper().readTree(run(check, "--json")).at("/mistakes");
  }

  private static Set<String> told(JsonNode mistakes) {
    Set<String> told = new TreeSet<>();
    mistakes.forEach(
        m ->
            told.add(
                String.join(
                    " ",
                    m.at("/step").asText(),
                    m.at("/pass").asText(),
                    m.at("/shown").asText().replace('-', ' '),
                    m.at("/code").asText())));
    return told;
  }

  /** Reads the blocks of the groups back. */
  private static Set<String> printed(String text) {
    Set<String> printed = new TreeSet<>();
    String blocks = text.split("\n\n")[4].replaceAll(",\n *", ", ");
    List<String> groups = List.of();
    String shown = "";
    for (String line : blocks.split("\n")) {
      if (!line.startsWith(" ")) {
        groups = List.of(line.split(", "));
        continue;
      }
      shown = line.substring(2, 10).isBlank() ? shown : line.substring(2, 10).strip();
      String[] row = line.substring(12).split(" {2,}");
      for (String group : groups) {
        for (String pass : row[0].split(", ")) {
          for (String code : row[1].split(", ")) {
            printed.add(String.join(" ", group, pass, shown, code));
          }
        }
      }
    }
    return printed;
  }

  @Test
  void theBlocksOfTheGroupsTellEveryMistakeOfEveryPass() throws IOException {
    for (List<String> check : checks) {
      assertThat(printed(run(check, "--all"))).isEqualTo(told(mistakes(check)));
      assertThat(printed(run(check)))
          .isEqualTo(
              new TreeSet<>(
                  told(mistakes(check)).stream()
                      .filter(m -> m.contains(" not seen ") || m.contains(" asked "))
                      .toList()));
    }
  }

  @Test
  void aGroupInFullSentencesLeavesNoneOut() throws IOException {
    for (List<String> check : checks) {
      JsonNode mistakes = mistakes(check);
      String group = mistakes.get(mistakes.size() / 2).at("/step").asText();
      String text = run(check, "--all", "--step=" + group).replaceAll("\\s+", " ");
      mistakes.forEach(
          m -> {
            if (m.at("/step").asText().equals(group)) {
              assertThat(text).contains(" " + m.at("/text").asText() + " ");
            }
          });
    }
  }

  @Test
  void noLineIsWiderThanAScreen() {
    for (List<String> check : checks) {
      assertThat(run(check, "--all").lines().skip(1))
          .allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(100));
    }
  }

  @Test
  void theDemoIsReadOnTwoScreens() {
    String text = run(List.of("procedure", "check", DEMO));
    assertThat(text.lines().count()).isLessThanOrEqualTo(115);
    assertThat(text)
        .contains(
            """
              M8x1.25 8.8      17 to 51 N.m   13 to 38 N.m    carrier-left, carrier-right
            """)
        .contains(
            """
            hidden-skip may leave no trace in carrier-left (snug), carrier-right (snug), pivot (snug),
            cable-guides: a second hit on a tight one counts for the one that was skipped. A later pass goes
            over carrier-left (snug), carrier-right (snug), pivot (snug) again.
            Next step: a wrench with angle (seen or asked about then), or a position with each reading, by
            wrench or scan (seen), or a check pass over cable-guides in another order (it would mend it).
            """)
        .contains(
            """
            carrier-left, carrier-right
              not seen  snug         hidden-skip, double-hit, tight-before, cross-threaded, over
                        snug, final  wrong-place, again-after-under, too-early, exchanged
                        final        missing-washer
              asked     final        double-hit, tight-before, over
            pivot
            """)
        .contains(
            """
            wrong-place: one of another group is pulled to this torque instead
              not seen  it counts here, as one of the other would; a position shows it, or at its own turn an
                        angle [the other: "brake-left" (final) for carrier-left, carrier-right, pivot,
                        cross-member, pinch-bolt; "carrier-left" (snug) for brake-left, brake-right, caliper,
                        cable-guides]
            """);
  }

  @Test
  void aProcedureThatTightensNothingHasNoMistakes() throws IOException {
    String look =
        file(
            "a.toml",
            "[[step]]\nid = \"a\"\nkind = \"attest\"\ntitle = \"T\"\nstatement = \"S.\"\n");
    assertThat(run(List.of("procedure", "check", look)))
        .contains("\n\nNo step here tightens anything.\n\n")
        .doesNotContain("--step");
  }

  @Test
  void whereAWasherIsAllThatMayBeMissedThatIsSaid() throws IOException {
    String lid =
        file(
            "lid.toml",
            step("lid", 1, pass("final", 50, "angle-min = \"20\"\nangle-max = \"70\"\n")));
    assertThat(run(List.of("procedure", "check", lid, "--wrench=T=position")))
        .contains(
            "\n\nEvery mistake that is told apart here would be seen, save a missing washer.\n\n");
  }

  @Test
  void whereNoAngleTellsASecondHitAWrenchWithAngleIsNoNextStep() throws IOException {
    String plate =
        file("p.toml", step("plate", 3, "recheck-angle = \"0\"\n" + pass("final", 50, "")));
    assertThat(run(List.of("procedure", "check", plate)))
        .contains(
            """
            hidden-skip may leave no trace in plate: a second hit on a tight one counts for the one that was
            skipped.
            Next step: a position with each reading, by wrench or scan (seen), or a check pass over each of them
            in another order (it would mend it).
            """);
  }
}
