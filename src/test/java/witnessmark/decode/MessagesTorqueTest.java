package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.torque.Angle;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.TorqueUnit;

class MessagesTorqueTest {
  private static final String LEAST =
      "{\"wrench\":\"TW-0417\",\"torque\":\"32.54\",\"unit\":\"N.m\"}";

  static List<Decoded> decode(String json) {
    return Messages.torque(json.getBytes(StandardCharsets.UTF_8));
  }

  private static TorqueEvent event(String json) {
    List<Decoded> decoded = decode(json);
    assertThat(decoded).singleElement().isInstanceOf(Torqued.class);
    return ((Torqued) decoded.get(0)).event();
  }

  private static void assertRefused(String json, String reason) {
    Sample all = Sample.of(json.getBytes(StandardCharsets.UTF_8));
    assertThat(decode(json)).containsExactly(new Malformed(reason, all));
  }

  /** The least event with one more field. */
  private static String with(String field) {
    return LEAST.substring(0, LEAST.length() - 1) + "," + field + "}";
  }

  @Test
  void theDocumentedExampleIsAnEvent() {
    String json =
        "{\"wrench\":\"TW-0417\",\"event\":123,\"time\":\"2026-11-25T10:02:03.120Z\","
            + "\"torque\":\"32.54\",\"unit\":\"N.m\",\"angle\":\"41.2\",\"direction\":\"cw\"}";
    assertThat(decode(json))
        .containsExactly(
            new Torqued(
                new TorqueEvent(
                    "TW-0417",
                    OptionalLong.of(123),
                    Optional.of(Instant.parse("2026-11-25T10:02:03.120Z")),
                    Torque.of("32.54", TorqueUnit.NEWTON_METRE),
                    Optional.of(Angle.of("41.2")),
                    Direction.CW,
                    Optional.empty(),
                    Optional.empty()),
                json));
  }

  @Test
  void optionalFieldsMayBeAbsentOrNull() {
    TorqueEvent least = event(LEAST);
    assertThat(least.number()).isEmpty();
    assertThat(least.time()).isEmpty();
    assertThat(least.direction()).isEqualTo(Direction.CW);
    assertThat(
            event(
                with(
                    "\"event\":null,\"time\":null,\"angle\":null,\"direction\":null,"
                        + "\"fastener\":null,\"operator\":null")))
        .isEqualTo(least);
  }

  @Test
  void theTorqueAtWhichTheTurningBeganIsInTheUnitOfTheEvent() {
    assertThat(event(LEAST).breakaway()).isEmpty();
    assertThat(event(with("\"breakaway\":\"3.10\"")).breakaway())
        .contains(Torque.of("3.10", TorqueUnit.NEWTON_METRE));
    assertThat(event(with("\"breakaway\":3.10")).breakaway())
        .contains(Torque.of("3.10", TorqueUnit.NEWTON_METRE));
  }

  @Test
  void positionAndBadgeAreTaken() {
    TorqueEvent event = event(with("\"fastener\":\"carrier-left/3\",\"operator\":\"badge-07\""));
    assertThat(event.fastener()).contains("carrier-left/3");
    assertThat(event.operator()).contains("badge-07");
  }

  @ParameterizedTest
  @CsvSource({"32.50", "1e1", "1E+1", "0", "007e0", "0.10", "\"32.50\"", "\"007\""})
  void digitsStayAsWritten(String written) {
    String digits = written.replace("\"", "");
    if (written.equals("007e0")) {
      // JSON has no leading zeros; as a text they are digits like any other.
      written = "\"007e0\"";
    }
    String json = "{\"wrench\":\"TW-0417\",\"torque\":" + written + ",\"unit\":\"N.m\"}";
    assertThat(event(json).torque().digits().text()).isEqualTo(digits);
  }

  @Test
  void theLargestEventNumberIsTaken() {
    assertThat(event(with("\"event\":9223372036854775807")).number())
        .hasValue(9223372036854775807L);
    assertThat(event(with("\"event\":0")).number()).hasValue(0);
  }

  @Test
  void unknownFieldsStayInTheRawText() {
    String json = " " + with("\"battery\": [81, {\"x\": null}]") + "\n";
    assertThat(((Torqued) decode(json).get(0)).raw()).isEqualTo(json.strip());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"torque\":\"1\",\"unit\":\"N.m\"}|the event has no wrench, which is required",
        "{\"wrench\":\"w\",\"unit\":\"N.m\"}|the event has no torque, which is required",
        "{\"wrench\":\"w\",\"torque\":1}|the event has no unit, which is required",
        "{\"wrench\":7,\"torque\":1,\"unit\":\"N.m\"}|wrench is a number; a text is allowed",
        "{\"wrench\":\"w\",\"torque\":true,\"unit\":\"N.m\"}|torque is true or false; a decimal as"
            + " a text or a number is allowed",
        "{\"wrench\":\"w\",\"torque\":-1,\"unit\":\"N.m\"}|torque -1 is negative; 0 or more is"
            + " allowed",
        "{\"wrench\":\"w\",\"torque\":100001,\"unit\":\"N.m\"}|torque 100001 N.m is too large; at"
            + " most 100000 N.m is allowed",
        "{\"wrench\":\"w\",\"torque\":\"1,5\",\"unit\":\"N.m\"}|torque \"1,5\" is not a decimal"
            + " number; allowed are forms like 32.54, 5 or 1.2e1, with at most 24 digits before"
            + " and after the point",
        "{\"wrench\":\"w\",\"torque\":1,\"unit\":\"Nm\"}|unit \"Nm\" is unknown; did you mean \"N.m\"?"
            + " Allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
        "{\"wrench\":\"w\",\"torque\":1,\"unit\":\"in-lb\"}|unit \"in-lb\" is unknown; did you mean"
            + " \"lbf.in\"? Allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
        "{\"wrench\":\"w\",\"torque\":1,\"unit\":\"bar\"}|unit \"bar\" is unknown; allowed are N.m"
            + " cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
        "{\"wrench\":\"\",\"torque\":1,\"unit\":\"N.m\"}|wrench must be 1 to 64 printable"
            + " characters without blanks at the ends",
        "[{\"wrench\":\"w\",\"wrench\":\"v\"}|the payload is not JSON: it breaks near character 29;"
            + " a JSON object or an array of objects is allowed",
      })
  void aFaultIsSaidInASentence(String json, String reason) {
    assertRefused(json, reason);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"event\":\"123\"|event is a text; a whole number without quotes is allowed",
        "\"event\":1.0|event \"1.0\" is no event number; a whole number from 0 to"
            + " 9223372036854775807 is allowed",
        "\"event\":-1|event \"-1\" is no event number; a whole number from 0 to"
            + " 9223372036854775807 is allowed",
        "\"event\":9223372036854775808|event \"9223372036854775808\" is no event number; a whole"
            + " number from 0 to 9223372036854775807 is allowed",
        "\"direction\":\"CW\"|direction \"CW\" is unknown; cw or ccw is allowed",
        "\"angle\":100001|angle 100001 is out of range; -100000 to 100000 degrees is allowed",
        "\"operator\":{}|operator is an object; a text is allowed",
        "\"unit\":\"N.m\"|the field \"unit\" stands twice; once is allowed",
        "\"x\":{\"y\":1,\"y\":2}|the field \"y\" stands twice; once is allowed",
      })
  void aFaultOfOneFieldIsSaidInASentence(String field, String reason) {
    assertRefused(with(field), reason);
  }

  @Test
  void whatIsNeitherObjectNorArrayIsRefused() {
    assertRefused("", "the payload is empty; a JSON object or an array of objects is allowed");
    assertRefused(
        "32.54", "the payload is a single value; a JSON object or an array of objects is allowed");
    assertRefused("[]", "an empty burst; 1 to 10000 elements are allowed");
    assertRefused("[7]", "an event is a number; a JSON object is allowed", "7");
  }

  private static void assertRefused(String json, String reason, String element) {
    Sample sample = Sample.of(element.getBytes(StandardCharsets.UTF_8));
    assertThat(decode(json)).containsExactly(new Malformed(reason, sample));
  }

  @Test
  void bytesAfterTheJsonRefuseTheWholePayload() {
    assertRefused(
        LEAST + LEAST,
        "something follows the JSON at character 51; one object or one array is allowed");
  }

  @Test
  void brokenJsonRefusesTheWholeBurst() {
    assertRefused(
        "[" + LEAST + ",{\"wrench\"",
        "the payload is not JSON: it breaks near character 62; a JSON object or an array of"
            + " objects is allowed");
  }

  @Test
  void bytesThatAreNotUtf8RefuseTheWholePayload() {
    byte[] payload = LEAST.getBytes(StandardCharsets.UTF_8);
    payload[12] = (byte) 0xFF;
    assertThat(Messages.torque(payload))
        .containsExactly(
            new Malformed("the bytes are not UTF-8 from byte 13 on", Sample.of(payload)));
  }
}
