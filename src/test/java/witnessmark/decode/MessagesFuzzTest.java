package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Malformed payloads, by default 100 000 a topic; {@code -Dfuzz.count=N} sets another number. */
class MessagesFuzzTest {
  static final int COUNT = Integer.getInteger("fuzz.count", 100_000);

  private static final String EVENT =
      "{\"wrench\":\"TW-0417\",\"event\":123,\"time\":\"2026-11-25T10:02:03.120Z\","
          + "\"torque\":\"32.54\",\"unit\":\"N.m\",\"angle\":41.2,\"direction\":\"cw\"}";
  private static final String SCAN = "{\"scan\":\"carrier-left/3\",\"operator\":\"badge-07\"}";

  @Test
  void noPayloadOfTheTorqueTopicEscapes() {
    fuzz(20261125, EVENT, Messages::torque);
  }

  @Test
  void noPayloadOfTheScanTopicEscapes() {
    fuzz(20261126, SCAN, Messages::scan);
  }

  private static void fuzz(long seed, String good, Function<byte[], List<Decoded>> decoder) {
    Random random = new Random(seed);
    Mutations mutations = new Mutations(random);
    byte[] one = good.getBytes(StandardCharsets.UTF_8);
    byte[] burst = ("[" + good + "," + good + "]").getBytes(StandardCharsets.UTF_8);
    List<Decoded> expected = decoder.apply(one);
    assertThat(expected).noneMatch(Malformed.class::isInstance);
    for (int malformed = 0, round = 0; malformed < COUNT; round++) {
      int at = round;
      Supplier<String> where = () -> "seed " + seed + ", round " + at;
      byte[] bad = mutations.of(random.nextInt(4) == 0 ? burst : one);
      List<Decoded> decoded = decoder.apply(bad);
      check(!decoded.isEmpty(), where, decoded);
      for (Decoded each : decoded) {
        malformed += describes(each, bad, where);
      }
      check(decoder.apply(one).equals(expected), where, "the good message");
    }
  }

  /** Checks that the outcome describes its own bytes; 1 for malformed. */
  static int describes(Decoded decoded, byte[] bytes, Supplier<String> where) {
    if (decoded instanceof Malformed m) {
      check(Sha.describesPart(m.sample(), bytes), where, m);
      return 1;
    }
    String raw = decoded instanceof Torqued t ? t.raw() : ((Scanned) decoded).raw();
    check(new String(bytes, StandardCharsets.UTF_8).contains(raw), where, raw);
    return 0;
  }

  /** Fails with what was found where; plain, because it runs some million times. */
  static void check(boolean holds, Supplier<String> where, Object found) {
    if (!holds) {
      fail(where.get() + ": " + found);
    }
  }
}
