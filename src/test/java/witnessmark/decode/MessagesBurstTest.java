package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class MessagesBurstTest {
  private static final String GOOD = "{\"wrench\":\"TW-0417\",\"torque\":32.50,\"unit\":\"N.m\"}";

  private static List<Decoded> decode(String json) {
    return Messages.torque(json.getBytes(StandardCharsets.UTF_8));
  }

  private static Malformed refused(String reason, String element) {
    return new Malformed(reason, Sample.of(element.getBytes(StandardCharsets.UTF_8)));
  }

  private static String padded(int bytes) {
    String start = GOOD.substring(0, GOOD.length() - 1) + ",\"x\":\"";
    return start + "x".repeat(bytes - start.length() - 2) + "\"}";
  }

  @Test
  void everyElementStandsOnItsOwn() {
    String bad = "{\"wrench\" : \"T\u00fc\"}";
    List<Decoded> decoded =
        decode("[ " + GOOD + ", " + bad + " ,12e3, \"text\",true ," + GOOD + "]");
    assertThat(decoded)
        .containsExactly(
            decode(GOOD).get(0),
            refused("the event has no torque, which is required", bad),
            refused("an event is a number; a JSON object is allowed", "12e3"),
            refused("an event is a text; a JSON object is allowed", "\"text\""),
            refused("an event is true or false; a JSON object is allowed", "true"),
            decode(GOOD).get(0));
  }

  @Test
  void anElementOf8KiBIsTakenAndOneByteMoreIsRefused() {
    String longest = padded(8192);
    String longer = padded(8193);
    List<Decoded> decoded = decode("[" + longest + "," + longer + "," + GOOD + "]");
    assertThat(decoded.get(0)).isInstanceOf(Torqued.class);
    assertThat(decoded.get(1))
        .isEqualTo(
            refused("an element is longer than 8192 bytes; at most that many are allowed", longer));
    assertThat(decoded.get(2)).isInstanceOf(Torqued.class);
  }

  @Test
  void anElementIsMeasuredInBytesNotCharacters() {
    String longer = padded(8192).replace("xx}", "\u20ac}").replace("xxxx\"}", "\u20ac\u20ac\"}");
    assertThat(longer.length()).isLessThan(8192);
    assertThat(decode(longer))
        .containsExactly(
            refused("an element is longer than 8192 bytes; at most that many are allowed", longer));
  }

  @Test
  void anElementNestedTooDeepIsRefusedAloneAndAPayloadNestedFarTooDeepAsAWhole() {
    String deep = "{\"x\":" + "[".repeat(32) + "]".repeat(32) + "}";
    assertThat(decode("[" + deep + "," + GOOD + "]"))
        .containsExactly(
            refused(
                "an element is nested deeper than 32 levels; at most that many are allowed", deep),
            decode(GOOD).get(0));
    String deeper = "[" + "[".repeat(1001) + "]".repeat(1001) + "]";
    assertThat(decode(deeper))
        .containsExactly(
            refused(
                "an element is nested so deep that nothing of the payload could be read; at most 32"
                    + " levels are allowed",
                deeper));
  }

  @Test
  void aBurstOfTenThousandIsTakenAndOneMoreRefusesItWhole() {
    String full = String.join(",", Collections.nCopies(10_000, GOOD));
    assertThat(decode("[" + full + "]"))
        .hasSize(10_000)
        .allMatch(d -> d.equals(decode(GOOD).get(0)));
    String more = "[" + full + "," + GOOD + "]";
    assertThat(decode(more))
        .containsExactly(
            refused("a burst of more than 10000 elements; at most that many are allowed", more));
  }

  @Test
  void aPayloadAbove4MiBIsRefusedUnread() {
    byte[] payload = new byte[4 * 1024 * 1024 + 1];
    Arrays.fill(payload, (byte) ' ');
    assertThat(Messages.torque(payload))
        .containsExactly(
            new Malformed(
                "the payload has 4194305 bytes; at most 4194304 are allowed", Sample.of(payload)));
  }
}
