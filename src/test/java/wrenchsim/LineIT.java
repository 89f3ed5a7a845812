package wrenchsim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wrenchsim.line.VirtualLine;

/** Frames over a real pseudo-terminal; the test is the bridge. */
class LineIT {
  @TempDir private Path directory;

  @Test
  void everyFrameIsSentAgainUntilItIsAnswered() throws Exception {
    Path link = directory.resolve("tw-0417");
    try (Simulator simulator =
            new Simulator(
                directory,
                "line",
                "--virtual",
                link.toString(),
                "--count",
                "20",
                "--first-event",
                "100");
        LineEnd bridge = new LineEnd(link)) {
      Map<Long, String> first = new LinkedHashMap<>();
      long withheldAt = 0;
      long cameAgainAfter = 0;
      int answered = 0;
      while (answered < 20) {
        LineEnd.Frame frame = bridge.next().orElseThrow();
        String before = first.putIfAbsent(frame.number(), frame.text());
        if (frame.number() == 103 && before == null) {
          withheldAt = System.nanoTime();
          continue;
        }
        if (frame.number() == 105 && before == null) {
          bridge.answer("N|refused");
          continue;
        }
        if (frame.number() == 103) {
          cameAgainAfter = System.nanoTime() - withheldAt;
        }
        assertThat(before).as("the very same frame again").isIn(null, frame.text());
        bridge.answer("A|TW-0417|" + frame.number() + "|in-band");
        answered++;
      }
      assertThat(simulator.status()).as(simulator.err()).isZero();
      assertThat(first).hasSize(20).containsKeys(100L, 119L);
      assertThat(cameAgainAfter / 1e9).isBetween(1.8, 6.0);
      assertThat(simulator.out())
          .matches(
              "line: 20 of 20 frames of TW-0417 answered in [0-9.]+ s \\(in-band 20\\), 2 sent again\\R");
    }
    assertThat(Files.exists(link)).as("the terminal goes with its process").isFalse();
  }

  @Test
  void aBridgeThatGoesAwayAndComesBackStillGetsWhatItNeverAnswered() throws Exception {
    Path link = directory.resolve("tw-0417");
    try (Simulator simulator =
        new Simulator(directory, "line", "--virtual", link.toString(), "--count", "3")) {
      try (LineEnd gone = new LineEnd(link)) {
        assertThat(gone.next().orElseThrow().number()).isEqualTo(1);
      }
      java.util.Set<Long> answered = new java.util.TreeSet<>();
      try (LineEnd bridge = new LineEnd(link)) {
        while (answered.size() < 3) {
          // Bytes may be cut where the first bridge left; the bridge's answer to those is a
          // refusal.
          LineEnd.Frame frame = bridge.next().orElseThrow();
          if (frame.text().matches("W\\|TW-0417\\|[0-9]+\\|.*\\|[0-9A-F]{4}")) {
            answered.add(frame.number());
            bridge.answer("A|TW-0417|" + frame.number() + "|unjudged");
          } else {
            bridge.answer("N|refused");
          }
        }
        assertThat(simulator.status()).as(simulator.err()).isZero();
      }
      assertThat(simulator.out()).startsWith("line: 3 of 3 frames of TW-0417 answered");
    }
  }

  @Test
  void aLineWithoutABridgeEndsUnfinished() throws Exception {
    try (Simulator simulator =
        new Simulator(
            directory,
            "line",
            "--virtual",
            directory.resolve("tw").toString(),
            "--count",
            "2",
            "--give-up",
            "1")) {
      assertThat(simulator.status()).isEqualTo(1);
      assertThat(simulator.err())
          .isEqualToIgnoringNewLines(
              "wrenchsim: no answer for 1 s: is a bridge reading the line? 2 frames are unanswered");
    }
  }

  @Test
  void aMissingSocatIsNamedWithItsPackage() {
    Path link = directory.resolve("tw");
    assertThatThrownBy(() -> new VirtualLine(link, "socat-is-not-here").open())
        .hasMessage(
            "a virtual line needs the program socat-is-not-here, which does not start (Cannot run program \"socat-is-not-here\": error=2, No such file or directory). Install it: apt install socat.");
  }

  @Test
  void aFileIsNeverReplacedByATerminal() throws Exception {
    Path file = Files.writeString(directory.resolve("notes.txt"), "mine");
    assertThatThrownBy(() -> new VirtualLine(file).open())
        .hasMessage(
            file
                + " exists and is not a link: a virtual line would replace it. Name another path.");
    assertThat(Files.readString(file)).isEqualTo("mine");
  }
}
