package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Payloads that the schemas and the decoder must both take, and that both must refuse. */
class PayloadTableTest {
  private static final String LEAST = "{\"wrench\":\"w\",\"torque\":\"1\",\"unit\":\"N.m\"}";

  /** The least event with the field added, or with it in the place of its own. */
  private static String with(String field) {
    String name = field.substring(0, field.indexOf(':') + 1);
    String rest = LEAST.contains(name) ? LEAST.replaceAll(name + "\"[^\"]*\",?", "") : LEAST;
    return (rest.substring(0, rest.length() - 1) + "," + field + "}").replace(",,", ",");
  }

  private static void taken(Takes topic, String payload) {
    assertThat(topic.decoder(payload)).as("decoder: %s", payload).isEmpty();
    assertThat(topic.schema(payload)).as("schema: %s", payload).isEmpty();
  }

  private static void refused(Takes topic, String payload) {
    assertThat(topic.decoder(payload)).as("decoder: %s", payload).isNotEmpty();
    assertThat(topic.schema(payload)).as("schema: %s", payload).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"wrench\":\"TW-0417\"",
        "\"wrench\":\"Prüfschlüssel 🔩\"",
        "\"event\":0",
        "\"event\":9223372036854775807",
        "\"event\":null",
        "\"time\":\"2026-11-25T10:02:03.120Z\"",
        "\"time\":\"2026-11-25t10:02:03+23:59\"",
        "\"time\":\"0000-01-01T00:00:00.123456789z\"",
        "\"time\":null",
        "\"torque\":0",
        "\"torque\":32.50",
        "\"torque\":1e1",
        "\"torque\":\"007.50\"",
        "\"torque\":\"1E+4\"",
        "\"torque\":\"-0\"",
        "\"unit\":\"kgf.cm\"",
        "\"angle\":-12.5",
        "\"angle\":\"-12.5\"",
        "\"angle\":100000",
        "\"angle\":null",
        "\"breakaway\":3.1",
        "\"breakaway\":\"0\"",
        "\"breakaway\":null",
        "\"direction\":\"ccw\"",
        "\"direction\":null",
        "\"fastener\":\"carrier-left/3\"",
        "\"fastener\":null",
        "\"operator\":\"badge-07\"",
        "\"battery\":[81,{\"low\":false}]",
      })
  void anEventWithThisIsTaken(String field) {
    taken(Takes.TORQUE, with(field));
    taken(Takes.TORQUE, "[" + LEAST + "," + with(field) + "]");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"wrench\":\"\"",
        "\"wrench\":null",
        "\"wrench\":7",
        "\"wrench\":\" w\"",
        "\"wrench\":\"w\\u2003\"",
        "\"wrench\":\"a\\tb\"",
        "\"wrench\":\"w\\n\"",
        "\"wrench\":\"\\ud83d\"",
        "\"wrench\":\"a\\u200bb\"",
        "\"event\":-1",
        "\"event\":1.5",
        "\"event\":\"1\"",
        "\"event\":9223372036854775808",
        "\"event\":true",
        "\"time\":\"2026-11-25T10:02:03\"",
        "\"time\":\"2026-11-25 10:02:03Z\"",
        "\"time\":\"2026-13-25T10:02:03Z\"",
        "\"time\":\"2026-11-25T24:00:00Z\"",
        "\"time\":\"2026-11-25T10:02:60Z\"",
        "\"time\":\"2026-11-25T10:02:03.1234567890Z\"",
        "\"time\":\"2026-11-25T10:02:03+24:00\"",
        "\"time\":1764064923",
        "\"torque\":-1",
        "\"torque\":\"-0.1\"",
        "\"torque\":\"32,54\"",
        "\"torque\":\"\"",
        "\"torque\":\".5\"",
        "\"torque\":\"1e100\"",
        "\"torque\":null",
        "\"torque\":true",
        "\"unit\":\"Nm\"",
        "\"unit\":\"n.m\"",
        "\"unit\":null",
        "\"angle\":100000.1",
        "\"angle\":\"41°\"",
        "\"angle\":[]",
        "\"breakaway\":-1",
        "\"breakaway\":\"-3.1\"",
        "\"breakaway\":\"3.1 N.m\"",
        "\"direction\":\"CW\"",
        "\"direction\":\"left\"",
        "\"direction\":1",
        "\"fastener\":\"\"",
        "\"fastener\":3",
        "\"operator\":\"badge-07\\r\"",
        "\"operator\":{}",
      })
  void anEventWithThisIsRefused(String field) {
    refused(Takes.TORQUE, with(field));
    refused(Takes.TORQUE, "[" + LEAST + "," + with(field) + "]");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "[]",
        "[[]]",
        "[null]",
        "[7]",
        "7",
        "null",
        "\"text\"",
        "{\"torque\":\"1\",\"unit\":\"N.m\"}",
        "{\"wrench\":\"w\",\"unit\":\"N.m\"}",
        "{\"wrench\":\"w\",\"torque\":\"1\"}",
      })
  void whatIsNoEventAtAllIsRefused(String payload) {
    refused(Takes.TORQUE, payload);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"scan\":\"badge-07\"}",
        "{\"scan\":\" \"}",
        "{\"scan\":\"01\\u001d17\\n\"}",
        "{\"scan\":\"🔩\",\"operator\":\"badge-07\",\"more\":1}",
        "{\"scan\":\"x\",\"operator\":null}",
        "[{\"scan\":\"x\"},{\"scan\":\"y\"}]",
      })
  void aScanLikeThisIsTaken(String payload) {
    taken(Takes.SCAN, payload);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "[]",
        "[{\"scan\":\"x\"},{}]",
        "{\"scan\":\"\"}",
        "{\"scan\":null}",
        "{\"scan\":12}",
        "{\"scan\":[\"x\"]}",
        "{\"scan\":\"\\udd29\"}",
        "{\"scan\":\"x\",\"operator\":\"\"}",
        "{\"scan\":\"x\",\"operator\":7}",
      })
  void aScanLikeThisIsRefused(String payload) {
    refused(Takes.SCAN, payload);
  }

  @ParameterizedTest
  @ValueSource(ints = {64, 65, 512, 513})
  void lengthsAreCountedInWholeCharactersOnBothSides(int length) {
    String text = "🔩".repeat(length);
    String scan = "{\"scan\":\"" + text + "\"}";
    if (length <= 512) {
      taken(Takes.SCAN, scan);
    } else {
      refused(Takes.SCAN, scan);
    }
    String event = with("\"fastener\":\"" + text + "\"");
    if (length <= 64) {
      taken(Takes.TORQUE, event);
    } else {
      refused(Takes.TORQUE, event);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {10_000, 10_001})
  void aBurstIsBoundedOnBothSides(int elements) {
    String burst = "[" + (LEAST + ",").repeat(elements - 1) + LEAST + "]";
    if (elements <= 10_000) {
      taken(Takes.TORQUE, burst);
    } else {
      refused(Takes.TORQUE, burst);
    }
  }
}
