package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;

class ProfileDecoderTest {
  private static final String COLUMNS =
      """
      [profile]
      name = "p"
      [message]
      form = "columns"
      delimiter = ";"
      columns = ["'W'", "wrench", "torque", "unit", "angle", "direction", "-"]
      """;
  private static final String PATTERN =
      """
      [profile]
      name = "p"
      charset = "latin1"
      [message]
      form = "pattern"
      pattern = '(?P<torque>[^ ]+) (?P<unit>[^ ]+)(?: from (?P<breakaway>[0-9.,]+))?(?: @(?P<angle>.*))?'
      [values]
      wrench = "TW-0417"
      decimal-comma = true
      """;
  private static final String JSON =
      """
      [profile]
      name = "p"
      [message]
      form = "json"
      pointers = { wrench = "/w", torque = "/t/0", unit = "/u", event = "/n" }
      """;

  private static List<Decoded> decode(String profile, String frame, Charset charset) {
    return new ProfileDecoder(ProfileFile.parse("p.toml", profile)).decode(frame.getBytes(charset));
  }

  private static List<Decoded> decode(String profile, String frame) {
    return decode(profile, frame, StandardCharsets.UTF_8);
  }

  private static TorqueEvent event(String profile, String frame) {
    List<Decoded> decoded = decode(profile, frame);
    assertThat(decoded).singleElement().isInstanceOf(Torqued.class);
    Torqued torqued = (Torqued) decoded.get(0);
    assertThat(torqued.raw()).isEqualTo(frame);
    return torqued.event();
  }

  private static void assertRefused(String profile, String frame, String reason) {
    Sample all = Sample.of(frame.getBytes(StandardCharsets.UTF_8));
    assertThat(decode(profile, frame)).containsExactly(new Malformed(reason, all));
  }

  @Test
  void columnsGiveTheFieldsAndBlanksAroundThemDoNotCount() {
    TorqueEvent event = event(COLUMNS, "W;TW-0417; 032.50 ;N.m;;;whatever");
    assertThat(event.wrench()).isEqualTo("TW-0417");
    assertThat(event.torque()).hasToString("032.50 N.m");
    assertThat(event.angle()).isEmpty();
    assertThat(event.direction()).isEqualTo(Direction.CW);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "W;TW-0417;1;N.m;;|the frame has 6 columns; 7 are allowed",
        "|the frame has 1 columns; 7 are allowed",
        "W;TW-0417;1;N.m;;;;|the frame has more than 7 columns; 7 are allowed",
        "X;TW-0417;1;N.m;;;|column 1 is \"X\"; \"W\" is allowed",
        "W; ;1;N.m;;;|the event has no wrench, which is required",
        "W;w;1;nm;;;|unit \"nm\" is unknown; did you mean \"N.m\"? Allowed are N.m cN.m lbf.ft lbf.in"
            + " ozf.in kgf.m kgf.cm",
        "W;w;1;N.m;;R;|direction \"R\" is unknown; cw or ccw is allowed",
      })
  void columnsThatDoNotFitAreRefused(String frame, String reason) {
    assertRefused(COLUMNS, frame == null ? "" : frame, reason);
  }

  @Test
  void aPatternGivesTheGroupsThatTookPart() {
    TorqueEvent event = event(PATTERN, "32,50 N.m @41,2");
    assertThat(event.torque()).hasToString("32.50 N.m");
    assertThat(event.angle()).hasToString("Optional[41.2]");
    assertThat(event(PATTERN, "32 N.m").angle()).isEmpty();
    assertThat(event(PATTERN, "32 N.m from 3,1 @41").breakaway()).hasToString("Optional[3.1 N.m]");
    assertRefused(PATTERN, "32", "the frame \"32\" does not match the profile's pattern");
  }

  @Test
  void withADecimalCommaAPointIsRefused() {
    assertRefused(
        PATTERN,
        "1.032,50 N.m",
        "torque \"1.032,50\" has a point where this profile writes decimals with a comma");
  }

  @Test
  void anyByteIsALatin1Character() {
    List<Decoded> decoded = decode(PATTERN, "32 N.m @\u00e9", StandardCharsets.ISO_8859_1);
    assertThat(decoded)
        .containsExactly(
            new Malformed(
                "angle \"\u00e9\" is not a decimal number; allowed are forms like 32.54, 5 or"
                    + " 1.2e1, with at most 24 digits before and after the point",
                Sample.of("32 N.m @\u00e9".getBytes(StandardCharsets.ISO_8859_1))));
  }

  @Test
  void bytesThatAreNotUtf8AreRefused() {
    List<Decoded> decoded = decode(COLUMNS, "W;T\u00fc", StandardCharsets.ISO_8859_1);
    assertThat(decoded)
        .containsExactly(
            new Malformed(
                "the bytes are not UTF-8 from byte 4 on",
                Sample.of("W;T\u00fc".getBytes(StandardCharsets.ISO_8859_1))));
  }

  @Test
  void pointersReachTextsAndNumbers() {
    TorqueEvent event = event(JSON, "{\"w\":417,\"t\":[1e1],\"u\":\"N.m\",\"n\":\"0012\"}");
    assertThat(event.wrench()).isEqualTo("417");
    assertThat(event.torque()).hasToString("1e1 N.m");
    assertThat(event.number()).hasValue(12);
    assertThat(event(JSON, "{\"w\":\"x\",\"t\":[1],\"u\":\"N.m\",\"n\":null}").number()).isEmpty();
  }

  @Test
  void everyElementOfAJsonArrayStandsOnItsOwn() {
    String good = "{\"w\":\"x\",\"t\":[1],\"u\":\"N.m\"}";
    String bad = "{\"w\":\"x\",\"t\":[{}],\"u\":\"N.m\"}";
    assertThat(decode(JSON, "[" + bad + ",[]," + good + "]"))
        .containsExactly(
            new Malformed(
                "torque is an object; a text or a number is allowed",
                Sample.of(bad.getBytes(StandardCharsets.UTF_8))),
            new Malformed(
                "an event is an array; a JSON object is allowed",
                Sample.of("[]".getBytes(StandardCharsets.UTF_8))),
            decode(JSON, good).get(0));
  }

  @Test
  void theChecksumIsVerifiedFirst() {
    String checked =
        COLUMNS + "[checksum]\nkind = \"xor8\"\npattern = '(?P<over>.*;)(?P<sum>.*)'\n";
    // By hand: 'x' ^ ';' = 0x78 ^ 0x3B = 0x43.
    assertRefused(checked, "x;43", "column 1 is \"x\"; \"W\" is allowed");
    assertRefused(checked, "x;44", "the checksum is 44 but its bytes give 43");
    assertRefused(checked, "x;4", "the checksum is 4 but its bytes give 43");
    assertRefused(checked, "x;043", "the checksum \"043\" is not 1 to 2 hexadecimal digits");
    assertRefused(checked, "x;", "the checksum \"\" is not 1 to 2 hexadecimal digits");
    assertRefused(checked, "x;\uff14", "the checksum \"\uff14\" is not 1 to 2 hexadecimal digits");
    assertRefused(
        checked, "x", "the frame has no checksum where the profile's pattern looks for it");
  }

  @Test
  void aMessageLongerThanAnyFrameIsRefusedUnread() {
    String frame = "x".repeat(65_537);
    assertRefused(COLUMNS, frame, "the message has 65537 bytes; at most 65536 are allowed");
  }

  @Test
  void jsonIsReadFromThePartThatTheChecksumIsOver() {
    String checked = JSON + "[checksum]\nkind = \"sum8\"\npattern = '(?P<over>.*)#(?P<sum>.*)'\n";
    // By hand: '[' + ']' = 0x5B + 0x5D = 0xB8.
    assertRefused(checked, "[]#B8", "an empty burst; 1 to 10000 elements are allowed");
    assertRefused(checked, "[]#B9", "the checksum is B9 but its bytes give B8");
    String json = "{\"w\":\"x\",\"t\":[1],\"u\":\"N.m\"}";
    int sum = json.chars().sum() & 0xFF;
    assertThat(decode(checked, json + "#" + String.format("%02x", sum)))
        .isEqualTo(decode(JSON, json));
  }
}
