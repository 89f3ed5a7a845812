package witnessmark.entry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class EntryJsonTest {
  @ParameterizedTest
  @MethodSource("witnessmark.entry.SampleEntries#all")
  void anEntryReadBackFromItsBytesIsTheSameEntry(Entry entry) {
    byte[] bytes = EntryJson.bytes(entry);
    Entry back = EntryJson.read(bytes);
    assertThat(EntryJson.bytes(back)).isEqualTo(bytes);
    if (!(entry instanceof Entry.Refused)) { // holds an array, whose equality is identity
      assertThat(back).isEqualTo(entry);
    }
  }

  @Test
  void thereIsASampleOfEveryKind() {
    assertThat(SampleEntries.all().stream().map(Object::getClass).collect(Collectors.toSet()))
        .containsExactlyInAnyOrderElementsOf(Arrays.asList(Entry.class.getPermittedSubclasses()));
  }

  @Test
  void aTorqueEntryKeepsTheDigitsThatWereSent() {
    assertThat(new String(EntryJson.bytes(SampleEntries.torque()), StandardCharsets.UTF_8))
        .startsWith("{\"kind\":\"torque\",\"v\":1,\"at\":\"2026-11-25T10:02:03.311Z\"")
        .contains("\"torque\":\"32.50 N.m\"")
        .contains("\"number\":123")
        .contains("\"fastener\":\"carrier-left/3\"")
        .contains("\"verdict\":\"in-band\"")
        .contains("\"effect\":\"credited\"");
  }

  @Test
  void aScanFromBeforeScansWereCommandsIsStillRead() {
    String old =
        "{\"kind\":\"scan\",\"v\":1,\"at\":\"2026-11-25T10:02:03.311Z\",\"station\":\"bench-1\","
            + "\"source\":\"mqtt:shop\",\"scan\":\"a/1\",\"job\":\"J-5\",\"fastener\":\"a/1\","
            + "\"meaning\":\"fastener\",\"text\":\"The next reading is for a/1.\"}";
    Entry.Scan scan = (Entry.Scan) EntryJson.read(old.getBytes(StandardCharsets.UTF_8));
    assertThat(scan.meaning()).isEqualTo(Meaning.FASTENER);
    assertThat(scan.procedure()).isEmpty();
    assertThat(scan.question()).isEmpty();
    assertThat(new String(EntryJson.bytes(scan), StandardCharsets.UTF_8)).isEqualTo(old);
  }

  @Test
  void whatCameLaterToAnEventIsAbsentWhereTheWrenchDidNotSayIt() {
    String with = new String(EntryJson.bytes(SampleEntries.torque()), StandardCharsets.UTF_8);
    String without = with.replace(",\"breakaway\":\"3.10 N.m\"", "");
    assertThat(without).isNotEqualTo(with).contains("\"fastener\":null");
    Entry.TorqueTaken old =
        (Entry.TorqueTaken) EntryJson.read(without.getBytes(StandardCharsets.UTF_8));
    assertThat(old.event().breakaway()).isEmpty();
    assertThat(new String(EntryJson.bytes(old), StandardCharsets.UTF_8)).isEqualTo(without);
  }

  @Test
  void aWrenchEntryOfAnEarlierVersionIsRead() {
    String old =
        "{\"kind\":\"wrench-enrolled\",\"v\":1,\"at\":\"2026-11-25T10:02:03.311Z\","
            + "\"wrench\":\"TW-0417\",\"low\":\"20 N.m\",\"high\":\"100 N.m\","
            + "\"calibrated\":\"2026-09-01T00:00:00.000Z\",\"due\":\"2027-09-01T00:00:00.000Z\"}";
    Entry.WrenchEnrolled entry =
        (Entry.WrenchEnrolled) EntryJson.read(old.getBytes(StandardCharsets.UTF_8));
    assertThat(entry.resolution()).isEmpty();
    assertThat(entry.type()).isEmpty();
    assertThat(entry.angle()).isEmpty();
    assertThat(new String(EntryJson.bytes(entry), StandardCharsets.UTF_8)).isEqualTo(old);
  }

  @Test
  void anUnknownKindIsRefusedByName() {
    assertThatThrownBy(
            () -> EntryJson.read("{\"v\":1,\"kind\":\"later\"}".getBytes(StandardCharsets.UTF_8)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("later");
  }
}
