package witnessmark.recall;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.entry.CalibrationPoint;
import witnessmark.procedure.Criticality;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** The case in docs/recall.md, which a person can follow by hand, is what the program computes. */
class WorkedCaseTest {
  private static final Span SPAN =
      new Span(
          Instant.parse("2026-09-01T00:00:00Z"),
          Instant.parse("2026-11-21T00:00:00Z"),
          10,
          ErrorCurve.NONE,
          ErrorCurve.of(List.of(point("20.4", "20"), point("63", "60"), point("94.5", "90"))));

  private static CalibrationPoint point(String shown, String reference) {
    return new CalibrationPoint(torque(shown), List.of(torque(reference)), new Digits("4"));
  }

  private static Torque torque(String newtonMetres) {
    return Torque.parse(newtonMetres + " N.m");
  }

  private static List<String[]> rows() throws IOException {
    List<String> lines = Files.readAllLines(Path.of("docs/recall.md"));
    int head =
        lines.indexOf(lines.stream().filter(l -> l.startsWith("| joint |")).findFirst().get());
    return lines.subList(head + 2, lines.size()).stream()
        .takeWhile(l -> l.startsWith("|"))
        .map(l -> Arrays.stream(l.split("\\|")).map(String::strip).skip(1).toArray(String[]::new))
        .toList();
  }

  private static Touch touch(String[] row) {
    String[] band = row[5].split(" to ");
    return new Touch(
        "ATR-26-0131",
        "J-6",
        row[0],
        "final",
        Criticality.valueOf(row[1].toUpperCase(java.util.Locale.ROOT)),
        Long.parseLong(row[3]),
        Instant.parse(row[2] + "T00:00:00Z"),
        torque(row[4]),
        torque(row[4]),
        torque(band[0]),
        torque(band[1]),
        Long.parseLong(row[3]));
  }

  private static String rounded(BigDecimal value, int digits) {
    return value.setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
  }

  private static String shown(Touch touch, BigDecimal error) {
    BigDecimal factor = BigDecimal.ONE.add(error.movePointLeft(2));
    return rounded(
        touch.atFastener().newtonMetres().divide(factor, java.math.MathContext.DECIMAL64), 3);
  }

  @Test
  void everyRowIsWhatIsComputed() throws IOException {
    assertThat(rows()).hasSize(6);
    for (String[] row : rows()) {
      Touch touch = touch(row);
      Rejudged joint = Rejudged.of(touch, SPAN);
      assertThat(rounded(joint.error(), 4) + (joint.assumed() ? "*" : "")).isEqualTo(row[6]);
      assertThat(rounded(joint.torque(), 3)).isEqualTo(row[7]);
      assertThat(shown(touch, SPAN.byTime(touch, SPAN.atStart(touch), SPAN.atFound(touch))))
          .isEqualTo(row[8]);
      assertThat(shown(touch, SPAN.byOperations(touch, SPAN.atStart(touch), SPAN.atFound(touch))))
          .isEqualTo(row[9]);
      assertThat("`" + joint.outlook().code() + "`").isEqualTo(row[10]);
    }
  }

  @Test
  void theRowsStandInTheOrderOfTheCallBack() throws IOException {
    assertThat(rows().stream().map(r -> Rejudged.of(touch(r), SPAN)))
        .isSortedAccordingTo(Rejudged.FIRST);
  }

  @Test
  void howFarOutIsInPerCentOfTheLimit() throws IOException {
    assertThat(rounded(Rejudged.of(touch(rows().get(1)), SPAN).beyond(), 2)).isEqualTo("1.52");
  }
}
