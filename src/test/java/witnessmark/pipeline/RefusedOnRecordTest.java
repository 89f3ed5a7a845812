package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.decode.Decoded;
import witnessmark.decode.Messages;
import witnessmark.decode.Sample;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;

/** Garbage of all kinds, by the hundred thousand, into a real log. */
class RefusedOnRecordTest {
  private static final int PAYLOADS = Integer.getInteger("fuzz.count", 100_000);
  private static final String GOOD =
      "{\"wrench\":\"TW-1\",\"event\":%d,\"torque\":\"50\",\"unit\":\"N.m\"}";

  @TempDir private Path directory;

  @Test
  void everyPayloadIsOnRecordWithTheHashOfItsBytesAndTheNextGoodEventIsTaken() {
    Random random = new Random(4711);
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    List<String> sent = new ArrayList<>();
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      Journal journal = new Journal(ledger);
      journal.note(new Entry.LogOpened(Bench.START, ledger.origin()));
      for (int i = 0; i < PAYLOADS; i += 500) {
        List<List<Arrival>> group = new ArrayList<>();
        for (int j = 0; j < 500; j++) {
          byte[] payload = spoilt(random, i + j);
          sent.add(Sample.of(payload).sha256());
          group.add(arrivals(payload));
        }
        byte[] good = String.format(GOOD, i).getBytes(StandardCharsets.UTF_8);
        group.add(arrivals(good));
        List<List<Outcome>> outcomes = journal.take(group);
        assertThat(outcomes.get(500).get(0).entries().get(0)).isInstanceOf(Entry.TorqueTaken.class);
      }
    }
    assertThat(refusedOnRecord(files)).isEqualTo(sent);
  }

  /** A message that no reader may take: cut short, or with a byte that no JSON can hold. */
  private static byte[] spoilt(Random random, int number) {
    byte[] bytes = String.format(GOOD, number).getBytes(StandardCharsets.UTF_8);
    if (random.nextBoolean()) {
      return java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length));
    }
    bytes[random.nextInt(bytes.length)] = (byte) (random.nextBoolean() ? 0x00 : 0xFF);
    return bytes;
  }

  private static List<Arrival> arrivals(byte[] payload) {
    List<Arrival> arrivals = new ArrayList<>();
    for (Decoded decoded : Messages.torque(payload)) {
      arrivals.add(new Arrival(Optional.of("bench-1"), "test", Bench.START, false, false, decoded));
    }
    return arrivals;
  }

  private static List<String> refusedOnRecord(LedgerFiles files) {
    List<String> found = new ArrayList<>();
    try (SqliteReading reading = SqliteReading.open(files)) {
      long next = 0;
      for (var chunk = reading.from(next, 1000);
          !chunk.isEmpty();
          chunk = reading.from(next, 1000)) {
        for (var stored : chunk) {
          next = stored.n() + 1;
          if (EntryJson.read(stored.bytes()) instanceof Entry.Refused refused) {
            found.add(refused.sha256());
          }
        }
      }
    }
    return found;
  }
}
