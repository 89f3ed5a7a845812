package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import witnessmark.torque.Adapter;
import witnessmark.torque.Angle;
import witnessmark.torque.AngleBand;
import witnessmark.torque.Band;
import witnessmark.torque.Digits;
import witnessmark.torque.Length;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

class ProcedureFileTest {
  private static String documented() throws IOException {
    String doc = Files.readString(Path.of("docs/procedure-format.md"));
    int from = doc.indexOf("```toml\n") + "```toml\n".length();
    return doc.substring(from, doc.indexOf("```", from));
  }

  private static Band band(String low, String high) {
    return new Band(Torque.parse(low), Torque.parse(high));
  }

  @Test
  void theDocumentedExampleParsesIntoWhatTheDocumentSays() throws IOException {
    Procedure procedure = ProcedureFile.parse("procedure-format.md", documented());

    assertThat(procedure.id()).isEqualTo("RAM-210");
    assertThat(procedure.revision()).isEqualTo("C");
    assertThat(procedure.title()).isEqualTo("Rear-axle module");
    assertThat(procedure.unitPattern()).contains("ATR-26-[0-9]{4}");
    assertThat(procedure.step("cross-member"))
        .contains(
            new TightenStep(
                "cross-member",
                "Cross-member to frame",
                Optional.of(List.of(new Prerequisite("frame-check", Optional.empty()))),
                List.of("1", "2", "3", "4"),
                new Order(Order.Kind.PATTERN, List.of(0, 2, 1, 3)),
                List.of(
                    new Pass(
                        "final",
                        Optional.of(Torque.parse("45 N.m")),
                        band("40.5 N.m", "49.5 N.m"),
                        Optional.of(new AngleBand(Angle.of("20"), Angle.of("70"))),
                        List.of(),
                        false)),
                new Joint(Optional.of("M8x1.25"), Optional.of("8.8"), Optional.of("zinc, dry")),
                List.of("TW-0417"),
                Criticality.DANGER,
                new Care(Telling.USUAL, Tool.ANY, new Rework(true, OptionalInt.of(3))),
                Optional.of("Support the axle."),
                Optional.of("pictures/cross.png")));
    assertThat(procedure.step("pivot"))
        .contains(
            new TightenStep(
                "pivot",
                "Pivot bolts",
                Optional.empty(),
                List.of("1", "2"),
                new Order(Order.Kind.STRICT, List.of(0, 1)),
                List.of(
                    new Pass(
                        "snug",
                        Optional.of(Torque.parse("15 N.m")),
                        band("12 N.m", "18 N.m"),
                        Optional.empty(),
                        List.of(),
                        false),
                    new Pass(
                        "final",
                        Optional.empty(),
                        band("85 N.m", "95 N.m"),
                        Optional.empty(),
                        List.of(new Prerequisite("cross-member", Optional.empty())),
                        false),
                    new Pass(
                        "check",
                        Optional.empty(),
                        band("85 N.m", "95 N.m"),
                        Optional.empty(),
                        List.of(),
                        true,
                        Optional.of(new Order(Order.Kind.PATTERN, List.of(1, 0))))),
                new Joint(Optional.empty(), Optional.empty(), Optional.empty()),
                List.of(),
                Criticality.FUNCTION,
                new Care(
                    Telling.USUAL,
                    new Tool(
                        Optional.of(WrenchKind.INDICATING),
                        Optional.of(
                            new Adapter(
                                Length.parse("350 mm"), Length.parse("40 mm"), Angle.of("0"))),
                        new Acceptance(Optional.of(BigDecimal.ONE)),
                        BigDecimal.TEN),
                    Rework.USUAL),
                Optional.empty(),
                Optional.empty()));
    assertThat(procedure.step("wire"))
        .contains(
            new AttestStep(
                "wire",
                "Safety wire",
                Optional.empty(),
                "Both pivot bolts are safety-wired, wire pulling to tighten.",
                false,
                Optional.empty(),
                Optional.empty()));
    assertThat(procedure.step("belt"))
        .contains(
            new MeasureStep(
                "belt",
                "Belt deflection",
                Optional.empty(),
                List.of("left", "right"),
                "mm",
                new Digits("8"),
                new Digits("12"),
                Optional.of(new Digits("1")),
                Optional.empty(),
                Optional.empty()));
  }

  @Test
  void whatMayBeLeftOutHasTheDocumentedDefault() {
    Procedure procedure =
        ProcedureFile.parse(
            "p.toml",
            """
            [procedure]
            id = "RAM-210"
            revision = "C"
            title = "Rear-axle module"

            [[step]]
            id = "guide"
            kind = "tighten"
            title = "Cable guide"
            positions = ["upper", "lower"]
            order = "any"
            torque = "24 lbf.ft"
            min = "20 lbf.ft"
            max = "6000 ozf.in"

            [[step]]
            id = "belt"
            kind = "measure"
            title = "Belt"
            unit = "mm"
            min = "-0.5"
            max = "0.50"
            note = '''
            First line.
            Second line.'''
            """);

    TightenStep guide = (TightenStep) procedure.step("guide").orElseThrow();
    assertThat(guide.fastener(1)).isEqualTo("guide/lower");
    assertThat(guide.order()).isEqualTo(new Order(Order.Kind.ANY, List.of(0, 1)));
    assertThat(guide.criticality()).isEqualTo(Criticality.FUNCTION);
    assertThat(guide.passes())
        .containsExactly(
            new Pass(
                "final",
                Optional.of(Torque.parse("24 lbf.ft")),
                band("20 lbf.ft", "6000 ozf.in"),
                Optional.empty(),
                List.of(),
                false));
    MeasureStep belt = (MeasureStep) procedure.step("belt").orElseThrow();
    assertThat(belt.labels()).containsExactly("value");
    assertThat(belt.spread()).isEmpty();
    assertThat(belt.high().text()).isEqualTo("0.50");
    assertThat(belt.note()).contains("First line.\nSecond line.");
    assertThat(procedure.accepts("anything")).isTrue();
  }

  @Test
  void aUnitNumberMustMatchThePatternAsAWhole() throws IOException {
    Procedure procedure = ProcedureFile.parse("procedure-format.md", documented());

    assertThat(procedure.accepts("ATR-26-0147")).isTrue();
    assertThat(procedure.accepts("ATR-26-01470")).isFalse();
    assertThat(procedure.accepts("X ATR-26-0147")).isFalse();
  }

  @Test
  void aByteOrderMarkIsIgnored() throws IOException {
    assertThat(ProcedureFile.parse("p.toml", "\uFEFF" + documented()))
        .isEqualTo(ProcedureFile.parse("p.toml", documented()));
  }
}
