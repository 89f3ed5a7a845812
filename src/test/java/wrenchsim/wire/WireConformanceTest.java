package wrenchsim.wire;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wrenchsim.Docs;
import wrenchsim.wrench.Reading;
import wrenchsim.wrench.Unit;

/** Against the literal examples of docs/messages.md and docs/simulator-line.md. */
class WireConformanceTest {
  private static final Reading EXAMPLE = example(Optional.of(123L), Optional.of("41.2"));

  private static Reading example(Optional<Long> event, Optional<String> angle) {
    return new Reading(
        "TW-0417",
        event,
        Optional.of(Instant.parse("2026-11-25T10:02:03.120Z")),
        "32.54",
        Unit.NEWTON_METRE,
        angle,
        true,
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void theTorqueMessageIsTheDocumentsExampleByteForByte() throws IOException {
    assertThat(new String(TorqueMessage.encode(EXAMPLE), UTF_8))
        .isEqualTo(Docs.line("messages.md", "{\"wrench\":\"TW-0417\",\"event\":123"));
  }

  @Test
  void aStoredBurstIsAnArrayOfMessagesEvenOfOne() throws IOException {
    String one = Docs.line("messages.md", "{\"wrench\":\"TW-0417\",\"event\":123");
    assertThat(new String(TorqueMessage.encode(List.of(EXAMPLE, EXAMPLE)), UTF_8))
        .isEqualTo("[" + one + "," + one + "]");
    assertThat(new String(TorqueMessage.encode(List.of(EXAMPLE)), UTF_8))
        .isEqualTo("[" + one + "]");
  }

  @Test
  void aScanIsAsDocumented() {
    assertThat(new String(ScanMessage.encode("carrier-left/3", Optional.of("badge-07")), UTF_8))
        .isEqualTo("{\"scan\":\"carrier-left/3\",\"operator\":\"badge-07\"}");
    assertThat(new String(ScanMessage.encode("carrier-left/3", Optional.empty()), UTF_8))
        .isEqualTo("{\"scan\":\"carrier-left/3\"}");
  }

  @Test
  void aMessageLeavesOutWhatTheWrenchDoesNotKnow() {
    Reading bare =
        new Reading(
            "TW-0417",
            Optional.empty(),
            Optional.empty(),
            "24.0",
            Unit.POUND_FORCE_FOOT,
            Optional.empty(),
            false,
            Optional.of("carrier-left/3"),
            Optional.of("badge-07"));
    assertThat(new String(TorqueMessage.encode(bare), UTF_8))
        .isEqualTo(
            "{\"wrench\":\"TW-0417\",\"torque\":\"24.0\",\"unit\":\"lbf.ft\",\"direction\":\"ccw\","
                + "\"fastener\":\"carrier-left/3\",\"operator\":\"badge-07\"}");
  }

  @Test
  void theFrameIsTheDocumentsExampleWithCrLf() throws IOException {
    assertThat(new String(Frame.encode(EXAMPLE), US_ASCII))
        .isEqualTo(Docs.line("simulator-line.md", "W|TW-0417|123|") + "\r\n");
  }

  @Test
  void theChecksumHasTheCheckValueOfItsCatalogueEntry() {
    // CRC-16/MODBUS in the catalogue of parametrised CRC algorithms, from memory; also in the doc.
    assertThat(Crc16.of("123456789".getBytes(US_ASCII))).isEqualTo(0x4B37);
    assertThat(Crc16.of(new byte[0])).isEqualTo(0xFFFF);
  }

  @Test
  void aFrameLeavesEmptyWhatTheWrenchDoesNotKnow() {
    Reading bare =
        new Reading(
            "TW-0417",
            Optional.of(0L),
            Optional.empty(),
            "24.0",
            Unit.POUND_FORCE_FOOT,
            Optional.empty(),
            false,
            Optional.empty(),
            Optional.empty());
    assertThat(new String(Frame.encode(bare), US_ASCII))
        .startsWith("W|TW-0417|0||24.0|lbf.ft||ccw|")
        .matches("[^\\r\\n]*\\|[0-9A-F]{4}\\r\\n");
  }

  @Test
  void aFrameNeedsANumber() {
    assertThatThrownBy(() -> Frame.encode(example(Optional.empty(), Optional.empty())))
        .hasMessage("the serial line needs an event number, but wrench TW-0417 does not count");
  }

  @Test
  void answersAreReadAsDocumentedAndNothingElseIs() throws IOException {
    assertThat(Answer.read(Docs.line("simulator-line.md", "A|TW-0417")))
        .contains(new Answer.Taken("TW-0417", 123, "in-band"));
    assertThat(Answer.read("N|refused")).contains(new Answer.Refused());
    for (String noise :
        List.of("", "A|TW-0417|x|in-band", "A|TW-0417|1", "B|TW-0417|1|in-band", "N|")) {
      assertThat(Answer.read(noise)).as(noise).isEmpty();
    }
  }

  @Test
  void theDocumentsExpectExampleIsUnderstood() throws Exception {
    String json = Docs.json("messages.md", "{\"station\":\"bench-1\",\"state\":\"tighten\"");
    ExpectMessage expect = ExpectMessage.read(json.getBytes(UTF_8));
    assertThat(expect.isTighten()).isTrue();
    assertThat(expect.job()).contains("J-12");
    assertThat(expect.unit()).contains("ATR-26-0147");
    assertThat(expect.procedure()).contains("RAM-210 C");
    assertThat(expect.done()).isEqualTo(7);
    assertThat(expect.expect())
        .containsExactly(
            new Expected(
                "carrier-left/3", "final", 33, 29.7, 36.3, Optional.of(40.0), List.of("TW-0417")));
  }

  @Test
  void theDocumentsVerdictExampleIsUnderstood() throws Exception {
    String json = Docs.json("messages.md", "{\"specversion\":\"1.0\"");
    assertThat(VerdictMessage.read(json.getBytes(UTF_8)))
        .isEqualTo(
            new VerdictMessage(
                "TW-0417",
                Optional.of(123L),
                Optional.of("32.54"),
                Optional.of("in-band"),
                "credited",
                Optional.of("carrier-left/3"),
                Optional.of(57L),
                Optional.empty()));
  }

  @Test
  void aVerdictOnWhatAPersonPlacedNeedsNoReadingOfItsOwn() throws Exception {
    VerdictMessage verdict =
        VerdictMessage.read(
            "{\"data\":{\"entry\":60,\"assigns\":57,\"effect\":\"credited\"}}".getBytes(UTF_8));
    assertThat(verdict.assigns()).contains(57L);
    assertThat(verdict.isCredited()).isTrue();
    assertThatThrownBy(() -> VerdictMessage.read("{\"data\":{}}".getBytes(UTF_8)))
        .hasMessage("the verdict message has no field 'wrench'");
  }

  @Test
  void otherStatesAndStepsAreWaitedFor() throws Exception {
    ExpectMessage dispose =
        ExpectMessage.read(
            "{\"state\":\"dispose\",\"done\":1,\"total\":2,\"expect\":[{\"fastener\":\"pivot/1\",\"entry\":7},{\"step\":\"wire\",\"statement\":\"s\",\"title\":\"t\"}]}"
                .getBytes(UTF_8));
    assertThat(dispose.isTighten()).isFalse();
    assertThat(dispose.isOver()).isFalse();
    assertThat(dispose.expect()).isEmpty();
    assertThat(ExpectMessage.read(new byte[0]).isOver()).isTrue();
  }

  @Test
  void aBandInAnotherUnitIsTurnedIntoNewtonMetres() throws Exception {
    ExpectMessage expect =
        ExpectMessage.read(
            "{\"state\":\"tighten\",\"expect\":[{\"fastener\":\"hub/1\",\"pass\":\"final\",\"low\":\"10\",\"high\":20,\"unit\":\"lbf.ft\"}]}"
                .getBytes(UTF_8));
    assertThat(expect.expect().get(0).lowNm()).isEqualTo(13.558179483314004);
    assertThat(expect.expect().get(0).targetNm())
        .as("without a target, the middle of the band")
        .isEqualTo(20.337269224971006);
  }

  @Test
  void whatABridgeMustNotSendIsNamed() {
    assertThatThrownBy(() -> ExpectMessage.read("{\"expect\":[]}".getBytes(UTF_8)))
        .hasMessage("the expect message has no field 'state'");
    assertThatThrownBy(() -> ExpectMessage.read("[]".getBytes(UTF_8)))
        .hasMessage("the expect message is not a JSON object");
    assertThatThrownBy(
            () ->
                ExpectMessage.read(
                    "{\"state\":\"tighten\",\"expect\":[{\"fastener\":\"hub/1\",\"pass\":\"final\",\"low\":\"1O\",\"high\":\"20\",\"unit\":\"N.m\"}]}"
                        .getBytes(UTF_8)))
        .hasMessage("the expected fastener hub/1 has '1O' in 'low', where a decimal belongs");
  }

  @Test
  void stationsAreNamedAsDocumented() {
    assertThat(new Topics("bench-1").torque()).isEqualTo("witnessmark/v1/bench-1/torque");
    assertThat(new Topics("bench-1").scan()).isEqualTo("witnessmark/v1/bench-1/scan");
    assertThat(new Topics("bench-1").verdict()).isEqualTo("witnessmark/v1/bench-1/verdict");
    assertThat(new Topics("bench-1").expect()).isEqualTo("witnessmark/v1/bench-1/expect");
    for (String wrong : List.of(".", "..", "", "a/b", "a+", "x".repeat(65))) {
      assertThatThrownBy(() -> new Topics(wrong))
          .hasMessage(
              "a station is 1 to 64 of A-Z a-z 0-9 . _ - and not . or .., but got '" + wrong + "'");
    }
  }
}
