package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CheckCommandTest {
  private static final String PROCEDURE =
      """
      [procedure]
      id = "P-1"
      revision = "A"
      title = "Two groups"
      [[step]]
      id = "plate"
      kind = "tighten"
      title = "Plate"
      fasteners = 4
      torque = "45 N.m"
      tolerance = "10 %"
      angle-min = "20"
      angle-max = "70"
      [[step]]
      id = "stay"
      kind = "tighten"
      title = "Stay"
      fasteners = 1
      torque = "20 N.m"
      tolerance = "40 %"
      thread = "M8x1.25"
      property-class = "8.8"
      """;

  @TempDir private Path directory;

  private String run(String... arguments) {
    StringWriter out = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(out, true));
    assertThat(line.execute(arguments)).as(out.toString()).isZero();
    return out.toString();
  }

  private String file() throws IOException {
    return Files.writeString(directory.resolve("p.toml"), PROCEDURE).toString();
  }

  @Test
  void withoutWrenchesTheWeakestIsAssumedAndWhatIsSeenIsLeftOut() throws IOException {
    String file = file();
    assertThat(run("procedure", "check", file))
        .isEqualTo(
            file
                + """
                : no faults. P-1 revision A, 2 steps, 5 fasteners, 5 fastener passes.
                doubtful: band-wide@stay: pass "final" allows 12 to 28 N.m, wider than ±30 %: is that meant?
                note: torques that reach the proof load of the bolts, and 75 % of it
                  BOLT         PROOF LOAD    75 % OF IT    GROUPS
                  M8x1.25 8.8  17 to 51 N.m  13 to 38 N.m  stay
                  a check on typing, not a torque to use; nut factor 0.10 to 0.30

                No wrench is named, so the weakest that the procedure takes is assumed: torque, and an angle where a
                window asks for one. Name wrenches with --wrench SERIAL=angle, or take those of --data DIR.

                hidden-skip is seen wherever it may be.
                Not seen everywhere, the worst first: tight-before, cross-threaded, wrong-place, again-after-under,
                missing-washer, exchanged.
                Each mistake in each pass counted, 10 are seen, 2 asked about, 7 not seen; with an angle in every
                reading 6 would not be seen; with a position in every reading 4 would not be seen.

                not seen: it may leave no trace; asked: a person is asked, and the job cannot close before the
                answer.

                plate
                  not seen  final  wrong-place, again-after-under, missing-washer, exchanged
                  asked     final  double-hit, over
                stay
                  not seen  final  tight-before, cross-threaded, missing-washer

                double-hit: a tight one is hit again
                  asked     whether it was on "stay" (final) is asked where the reading leaves it open
                tight-before: it was tight before its first reading
                  not seen  the torque it was brought to is not on record; an angle window shows it
                cross-threaded: a crossed thread reaches the torque early
                  not seen  no torque tells it; an angle window shows it
                over: too much torque, also on a tight one
                  asked     another could be meant, or a tight one was hit
                wrong-place: one of another group is pulled to this torque instead
                  not seen  it counts here, as one of "stay" (final) would; a position shows it, or at its own turn
                            an angle
                again-after-under: a tight one is hit again while the next stands below its band
                  not seen  asked only where much was left to turn; little left looks alike. Finish one before the
                            next, or scan it
                missing-washer: a washer is missing
                  not seen  seen only where it takes the angle out of the window; have it confirmed [plate]
                  not seen  no torque tells it; have it confirmed in an attest step [stay]
                exchanged: two look-alikes are done in the other order
                  not seen  the count stays right, but names are those of the order; a scan names the one pulled

                With --step NAME one group is told in full sentences.

                These checks look for slips of typing. They are never a source of torque values:
                the maker's service instructions decide.
                """);
  }

  @Test
  void allTellsWhatIsSeenToo() throws IOException {
    assertThat(run("procedure", "check", file(), "--all"))
        .contains("; seen: it is flagged, or credited where it was.\n")
        .contains(
            """
            plate
              not seen  final  wrong-place, again-after-under, missing-washer, exchanged
              asked     final  double-hit, over
              seen      final  hidden-skip, tight-before, cross-threaded, under, too-early, skip
            """)
        .contains(
            """
            hidden-skip: one is skipped, hidden by a second hit on another of the group
              seen      a turn of 5 degrees or less is below the window, so that the skipped one stays due
            """);
  }

  @Test
  void oneGroupIsToldInFullSentences() throws IOException {
    String file = file();
    assertThat(run("procedure", "check", file, "--step=plate"))
        .isEqualTo(
            file
                + """
                : no faults. P-1 revision A, 2 steps, 5 fasteners, 5 fastener passes.

                No wrench is named, so the weakest that the procedure takes is assumed: torque, and an angle where a
                window asks for one. Name wrenches with --wrench SERIAL=angle, or take those of --data DIR.

                plate
                  not seen: wrong-place (final): one of another group is pulled to this torque instead
                    it counts here, as one of "stay" (final) would; a position shows it, or at its own turn an angle
                  not seen: again-after-under (final): a tight one is hit again while the next stands below its band
                    asked only where much was left to turn; little left looks alike. Finish one before the next, or
                    scan it
                  not seen: missing-washer (final): a washer is missing
                    seen only where it takes the angle out of the window; have it confirmed
                  not seen: exchanged (final): two look-alikes are done in the other order
                    the count stays right, but names are those of the order; a scan names the one pulled
                  asked: double-hit (final): a tight one is hit again
                    whether it was on "stay" (final) is asked where the reading leaves it open
                  asked: over (final): too much torque, also on a tight one
                    another could be meant, or a tight one was hit

                These checks look for slips of typing. They are never a source of torque values:
                the maker's service instructions decide.
                """);
    assertThat(run("procedure", "check", file, "--step=plate", "--step=stay"))
        .contains("doubtful: band-wide@stay", "\nplate\n", "\nstay\n");
  }

  @Test
  void aGroupThatThereIsNotIsRefusedWithTheNearest() throws IOException {
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setErr(new PrintWriter(err, true));
    assertThat(line.execute("procedure", "check", file(), "--step=plat")).isEqualTo(2);
    assertThat(err.toString())
        .startsWith("no step \"plat\" tightens anything; did you mean \"plate\"?\n");
  }

  @Test
  void aWrenchThatIsNamedTwiceShowsBoth() throws IOException {
    assertThat(
            run("procedure", "check", file(), "--wrench=T=angle", "--wrench=T=position", "--all"))
        .contains("The wrenches are taken to be T (angle+position).\n")
        .contains("seen      final  hidden-skip", "skip, exchanged\n");
  }

  @Test
  void enrolledWrenchesAreTakenAsTheyAreAndHeldAgainstEachPass() throws IOException {
    String data = "--data=" + directory.resolve("data");
    run("ledger", "create", data);
    run("wrench", "enrol", "TW-1", "--max=100 N.m", "--calibrated=2026-09-01", data);
    run("wrench", "enrol", "TW-2", "--max=9 N.m", "--calibrated=2026-09-01", "--no-angle", data);
    assertThat(run("procedure", "check", file(), data))
        .contains("The wrenches are taken to be TW-1 (angle), TW-2 (torque-only).\n")
        .as("TW-2 is too small to be used here")
        .contains("the first of a group has nothing to be compared with");
    run("wrench", "enrol", "TW-1", "--max=9 N.m", "--calibrated=2026-09-02", data);
    assertThat(run("procedure", "check", file(), data))
        .contains(
            "doubtful: wrench-unfit@plate: no enrolled wrench can do pass \"final\" (40.5 to 49.5"
                + " N.m)\n");
  }

  @Test
  void programsGetEverything() throws IOException {
    JsonNode told =
        new ObjectMapper()
            .readTree(run("procedure", "check", file(), "--wrench=T=angle", "--json"));
    assertThat(told.at("/wrenches/T").asText()).isEqualTo("angle");
    assertThat(told.at("/findings/0/code").asText()).isEqualTo("band-wide");
    assertThat(told.at("/notes/0").asText())
        .isEqualTo(
            "stay: M8x1.25 8.8 reaches proof load between 17 and 51 N.m, 75 % of it between 13 and"
                + " 38 N.m (nut factor 0.10 to 0.30); this is a check on typing, not a torque to"
                + " use");
    assertThat(told.at("/mistakes").findValuesAsText("code"))
        .contains("hidden-skip", "skip", "double-hit", "tight-before");
    assertThat(told.at("/mistakes/0").toString())
        .isEqualTo(
            "{\"code\":\"hidden-skip\",\"step\":\"plate\",\"pass\":\"final\",\"shown\":\"seen\","
                + "\"text\":\"a turn of 5 degrees or less is below the window, so that the skipped"
                + " one stays due\"}");
  }
}
