package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Generated payloads: a schema takes exactly what the decoder takes, but for what a schema cannot
 * say, which is listed here and in docs/messages.md.
 */
class PayloadAgreementTest {
  private static final int ROUNDS = 10_000;

  /** What only the decoder refuses, by the reason it gives. */
  private static final Map<String, Pattern> BEYOND_A_SCHEMA =
      Map.of(
          "size of a torque across units",
              Pattern.compile("torque \\S+ \\S+ is too large; at most 100000 N.m is allowed"),
          "size of an angle as a text", Pattern.compile("angle \\S+ is out of range; .*"),
          "digits of a number without quotes",
              Pattern.compile(
                  "(torque|angle|breakaway) \"[-+0-9.eE…]+\" is not a decimal number; .*"),
          "fraction or exponent of a whole number",
              Pattern.compile("event \"[-+0-9.eE]+\" is no event number; .*"),
          "date that no calendar has", Pattern.compile("time \"\\S+\" does not exist; .*"),
          "year out of range in UTC", Pattern.compile("time \"\\S+\" is out of range; .*"),
          "name that stands twice", Pattern.compile("the field \"\\w+\" stands twice; .*"),
          "length of an element", Pattern.compile("an element is longer than 8192 bytes; .*"),
          "depth of an element", Pattern.compile("an element is nested deeper than 32 levels; .*"));

  private static final List<String> LABELS =
      List.of(
          "\"TW-0417\"",
          "\"a b\"",
          "\"🔩\"",
          "\"\"",
          "\" a\"",
          "\"a \"",
          "\"a\\u00a0\"",
          "\"a\\u0000\"",
          "\"a\\u2028\"",
          "\"\\ud83d\"",
          "\"\\u0378\"",
          "\"a\\u00ad\"",
          "null",
          "1",
          "true",
          "{}",
          "[]",
          "\"" + "x".repeat(64) + "\"",
          "\"" + "x".repeat(65) + "\"");

  private static final Map<String, List<String>> EVENT = new LinkedHashMap<>();
  private static final Map<String, List<String>> SCAN = new LinkedHashMap<>();

  static {
    EVENT.put("wrench", LABELS);
    EVENT.put(
        "event",
        List.of(
            "0",
            "7",
            "9223372036854775807",
            "9223372036854775808",
            "-1",
            "-0",
            "1.0",
            "1e2",
            "1.5",
            "\"7\"",
            "null",
            "true",
            "[7]"));
    EVENT.put(
        "time",
        List.of(
            "\"2026-11-25T10:02:03Z\"",
            "\"2026-02-29T10:02:03Z\"",
            "\"2024-02-29T10:02:03Z\"",
            "\"2026-04-31T10:02:03.5+01:00\"",
            "\"0000-01-01T00:00:00+00:01\"",
            "\"9999-12-31T23:59:59-00:01\"",
            "\"2026-11-25T10:02:60Z\"",
            "\"2026-11-25\"",
            "\"10000-01-01T00:00:00Z\"",
            "\"2026-11-25T10:02Z\"",
            "\"2026-11-25T10:02:03Z \"",
            "null",
            "5"));
    EVENT.put(
        "unit", List.of("\"N.m\"", "\"lbf.ft\"", "\"ozf.in\"", "\"Nm\"", "\"\"", "null", "1"));
    EVENT.put("direction", List.of("\"cw\"", "\"ccw\"", "\"CCW\"", "\"\"", "null", "0"));
    EVENT.put("fastener", LABELS);
    EVENT.put("operator", LABELS);
    EVENT.put("more", List.of("1", "\"x\"", "{\"x\":[1,null]}", "null"));
    SCAN.put(
        "scan",
        List.of(
            "\"badge-07\"",
            "\" \"",
            "\"\\u001d\"",
            "\"\"",
            "\"\\udd29x\"",
            "null",
            "7",
            "[]",
            "\"" + "x".repeat(512) + "\"",
            "\"" + "x".repeat(513) + "\""));
    SCAN.put("operator", LABELS);
    SCAN.put("more", List.of("1", "{}", "null"));
  }

  @Test
  void eventsAreTakenByBothOrByNeither() {
    Map<String, Integer> seen =
        agree(Takes.TORQUE, 20261125, EVENT, List.of("torque", "angle", "breakaway"));
    assertThat(seen.keySet()).containsAll(BEYOND_A_SCHEMA.keySet()).contains("taken", "refused");
    assertThat(seen.get("taken")).isGreaterThan(1000);
    assertThat(seen.get("refused")).isGreaterThan(1000);
  }

  @Test
  void scansAreTakenByBothOrByNeither() {
    Map<String, Integer> seen = agree(Takes.SCAN, 20261126, SCAN, List.of());
    assertThat(seen.get("taken")).isGreaterThan(1000);
    assertThat(seen.get("refused")).isGreaterThan(1000);
  }

  private static Map<String, Integer> agree(
      Takes topic, long seed, Map<String, List<String>> fields, List<String> decimals) {
    Random random = new Random(seed);
    Map<String, Integer> seen = new TreeMap<>();
    for (int round = 0; round < ROUNDS; round++) {
      String payload = payload(random, fields, decimals);
      List<String> decoder = topic.decoder(payload);
      List<String> schema = topic.schema(payload);
      String outcome = schema.isEmpty() ? outcome(decoder) : "refused";
      if (outcome.isEmpty() || (!schema.isEmpty() && decoder.isEmpty())) {
        fail(
            "seed %d, round %d: %s%ndecoder: %s%nschema: %s",
            seed, round, payload, decoder, schema);
      }
      seen.merge(outcome, 1, Integer::sum);
    }
    return seen;
  }

  /** What a payload that validates came to; empty where the decoder has no listed reason. */
  private static String outcome(List<String> reasons) {
    if (reasons.isEmpty()) {
      return "taken";
    }
    String first = "";
    for (String reason : reasons) {
      first =
          BEYOND_A_SCHEMA.entrySet().stream()
              .filter(e -> e.getValue().matcher(reason).matches())
              .map(Map.Entry::getKey)
              .findFirst()
              .orElse("");
      if (first.isEmpty()) {
        return "";
      }
    }
    return first;
  }

  private static String payload(
      Random random, Map<String, List<String>> fields, List<String> decimals) {
    if (random.nextInt(10) > 0) {
      return object(random, fields, decimals);
    }
    int elements = random.nextInt(3);
    StringBuilder burst = new StringBuilder("[");
    for (int i = 0; i < elements; i++) {
      burst.append(i == 0 ? "" : ",").append(object(random, fields, decimals));
    }
    return burst.append("]").toString();
  }

  /** Mostly good: the first value of a field is, and a bad one should be alone to be seen. */
  private static String object(
      Random random, Map<String, List<String>> fields, List<String> decimals) {
    StringBuilder object = new StringBuilder("{");
    fields.forEach(
        (name, values) -> {
          if (random.nextInt(12) > 0) {
            boolean any = random.nextInt(6) == 0;
            put(object, name, values.get(any ? random.nextInt(values.size()) : 0));
          }
        });
    for (String name : decimals) {
      if (random.nextInt(12) > 0) {
        put(object, name, decimal(random));
      }
    }
    if (random.nextInt(200) == 0) {
      put(object, "more", "1");
      put(object, "more", "2");
    }
    if (random.nextInt(200) == 0) {
      put(object, "deep", "[".repeat(32) + "]".repeat(32));
    }
    if (random.nextInt(200) == 0) {
      put(object, "long", "\"" + "x".repeat(8192) + "\"");
    }
    return object.append("}").toString();
  }

  private static void put(StringBuilder object, String name, String value) {
    object
        .append(object.length() == 1 ? "" : ",")
        .append('"')
        .append(name)
        .append("\":")
        .append(value);
  }

  /** A decimal as a number or as a text; now and then too large, too long, or none at all. */
  private static String decimal(Random random) {
    StringBuilder digits = new StringBuilder(random.nextInt(8) == 0 ? "-" : "");
    digits.append(random.nextInt(4) == 0 ? "0" : Integer.toString(1 + random.nextInt(120_000)));
    if (random.nextBoolean()) {
      digits.append('.').append(random.nextInt(10));
      if (random.nextInt(10) == 0) {
        digits.append("0123456789".repeat(3));
      }
    }
    if (random.nextInt(8) == 0) {
      digits.append(List.of("e1", "E-3", "e+2", "e99", "e-100").get(random.nextInt(5)));
    }
    if (random.nextBoolean()) {
      return digits.toString();
    }
    if (random.nextInt(12) == 0) {
      return List.of("\"\"", "\"1,5\"", "\"NaN\"", "\" 1\"", "true", "{}", "null")
          .get(random.nextInt(7));
    }
    return "\"" + (random.nextInt(12) == 0 ? "00" : "") + digits + "\"";
  }
}
