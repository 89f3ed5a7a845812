package witnessmark.entry;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.pipeline.Bench;
import witnessmark.torque.Direction;

/** The quick reader of torque entries gives what the general reader gives, or leaves it to it. */
class TorqueReaderTest {
  private static final int BROKEN = Integer.getInteger("fuzz.count", 100_000);

  /** Entries of a shop in which a little of everything happens. */
  private static List<Entry> shop() {
    Random random = new Random(3);
    Bench bench =
        Bench.on(
            Bench.group(4, "order = \"any\"", "angle-min = \"10\"", "angle-max = \"60\"")
                + Bench.step("b", 3, "acceptance = \"guarded\""));
    bench.person(Bench.wrench("TW-1", "2.0"));
    for (int i = 0; i < 200; i++) {
      String torque = 40 + random.nextInt(20) + "." + random.nextInt(100) + " N.m";
      String angle = random.nextBoolean() ? "" : Integer.toString(random.nextInt(70));
      String fastener = random.nextInt(3) > 0 ? "" : "a/" + (1 + random.nextInt(5));
      Direction direction = random.nextInt(20) == 0 ? Direction.CCW : Direction.CW;
      bench.takeStored(
          bench.event("TW-" + (1 + random.nextInt(3)), torque, angle, direction, fastener));
    }
    return bench.log();
  }

  @Test
  void everyTorqueEntryIsReadAsByTheGeneralReader() {
    int torques = 0;
    for (Entry entry : shop()) {
      byte[] bytes = EntryJson.bytes(entry);
      if (entry instanceof Entry.TorqueTaken) {
        assertThat(TorqueReader.read(bytes)).contains(entry).contains(EntryJson.general(bytes));
        assertThat(Gist.read(bytes)).contains(Gist.of((Entry.TorqueTaken) entry));
        torques++;
      } else {
        assertThat(TorqueReader.read(bytes)).isEmpty();
        assertThat(Gist.read(bytes)).isEmpty();
      }
    }
    assertThat(torques).isEqualTo(200);
    for (Entry sample : SampleEntries.all()) {
      assertThat(EntryJson.bytes(EntryJson.read(EntryJson.bytes(sample))))
          .isEqualTo(EntryJson.bytes(sample));
      assertThat(TorqueReader.read(EntryJson.bytes(sample)).isPresent())
          .isEqualTo(sample instanceof Entry.TorqueTaken);
    }
  }

  @Test
  void whateverItTakesTheGeneralReaderTakesAlike() {
    Random random = new Random(4);
    List<byte[]> good =
        shop().stream().filter(Entry.TorqueTaken.class::isInstance).map(EntryJson::bytes).toList();
    int taken = 0;
    for (int i = 0; i < BROKEN; i++) {
      byte[] bytes = good.get(random.nextInt(good.size())).clone();
      for (int change = random.nextInt(3); change >= 0; change--) {
        bytes[random.nextInt(bytes.length)] = (byte) (32 + random.nextInt(95));
      }
      if (TorqueReader.read(bytes).isPresent()) {
        taken++;
        assertThat(EntryJson.general(bytes))
            .as(new String(bytes, StandardCharsets.UTF_8))
            .isEqualTo(TorqueReader.read(bytes).get());
      }
    }
    assertThat(taken).isBetween(BROKEN / 20, BROKEN * 19 / 20);
  }
}
