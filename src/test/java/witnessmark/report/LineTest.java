package witnessmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.entry.Entry;
import witnessmark.entry.SampleEntries;

class LineTest {
  @ParameterizedTest
  @MethodSource("witnessmark.entry.SampleEntries#all")
  void everyKindOfEntryHasALineAndAnExplanation(Entry entry) {
    Line line = Line.of(7, entry);
    assertThat(line.cell("entry")).isEqualTo("7");
    assertThat(line.cell("at")).isEqualTo("2026-11-25T10:02:03.311Z");
    assertThat(line.cell("kind")).isNotEmpty();
    assertThat(line.cell("text")).isNotEmpty();
    assertThat(Explanation.of(7, entry).get(0))
        .isEqualTo("Entry 7, " + line.cell("kind") + ", taken 2026-11-25T10:02:03.311Z");
  }

  @Test
  void aReadingPrintedIsTheReadingSent() {
    Line line = Line.of(57, SampleEntries.torque());
    assertThat(line.cell("torque")).isEqualTo("32.50");
    assertThat(line.cell("unit")).isEqualTo("N.m");
    assertThat(line.cell("angle")).isEqualTo("41.2");
    assertThat(line.cell("event")).isEqualTo("123");
    assertThat(line.cell("operator")).isEqualTo("badge-07");
    assertThat(line.cell("low")).isEqualTo("29.7");
    assertThat(line.cell("lowunit")).isEqualTo("N.m");
    assertThat(line.cell("high")).isEqualTo("36.3");
    assertThat(line.cell("highunit")).isEqualTo("N.m");
    assertThat(line.cell("atfastener")).isEqualTo("36.2142857 N.m");
    assertThat(line.cell("rule")).isEqualTo("guarded");
    assertThat(line.cell("guard")).isEqualTo("0.3 N.m");
  }

  @Test
  void anExplanationGivesReasonObjectionBandAndEffect() {
    assertThat(Explanation.of(57, SampleEntries.torque()))
        .contains(
            "  wrench      TW-0417, its event 123",
            "  reading     32.50 N.m, 41.2 degrees, began to turn at 3.10 N.m, cw",
            "  placed on   carrier-left/3, final pass",
            "  because     next-in-sequence",
            "  could be    carrier-right/3",
            "  objection   angle-missing",
            "  band        29.7 to 36.3 N.m",
            "  at fastener 36.2142857 N.m",
            "  rule        guarded, guard band 0.3 N.m, factor 0.83",
            "  turned      44.7 degrees over all pulls",
            "  verdict     in-band",
            "  effect      credited",
            "  undoes      pinch:final");
  }
}
