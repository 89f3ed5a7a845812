package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueUnit;

class ProfileFileTest {
  private static final String LEAST =
      """
      [profile]
      name = "p"
      [message]
      form = "columns"
      delimiter = ";"
      columns = ["wrench", "torque", "unit"]
      """;

  private static Profile parse(String text) {
    return ProfileFile.parse("p.toml", text);
  }

  private static void assertFaults(String text, String... faults) {
    assertThatThrownBy(() -> parse(text)).hasMessage(String.join("\n", faults));
  }

  @Test
  void theLeastProfileHasTheDefaults() {
    Profile profile = parse(LEAST);
    assertThat(profile.name()).isEqualTo("p");
    assertThat(profile.charset()).isEqualTo(StandardCharsets.UTF_8);
    assertThat(profile.frame()).isEmpty();
    assertThat(profile.checksum()).isEmpty();
    assertThat(profile.values()).isEqualTo(Values.NONE);
    assertThat(profile.time()).isEmpty();
    assertThat(profile.poll()).isEmpty();
    assertThat(profile.reply()).isEqualTo(Reply.NONE);
    assertThat(profile.form())
        .isEqualTo(
            new Columns(
                ";",
                List.of(
                    new Column(Optional.of(EventField.WRENCH), Optional.empty()),
                    new Column(Optional.of(EventField.TORQUE), Optional.empty()),
                    new Column(Optional.of(EventField.UNIT), Optional.empty()))));
  }

  private static final String SCANNER =
      """
      [profile]
      name = "p"
      [frame]
      end = "\\r"
      [message]
      form = "columns"
      delimiter = ";"
      columns = ["'S'", "scan", "operator"]
      [values]
      operator = "badge-07"
      [reply]
      accepted = "{meaning}"
      """;

  @Test
  void aMessageThatGivesAScanIsAScanners() {
    Profile profile = parse(SCANNER);
    assertThat(profile.scans()).isTrue();
    assertThat(parse(LEAST).scans()).isFalse();
    ProfileDecoder decoder = new ProfileDecoder(profile);
    assertThat(decoder.decode(utf8("S; ATR-26-0147 ;badge-11")))
        .containsExactly(
            new Scanned("ATR-26-0147", Optional.of("badge-11"), "S; ATR-26-0147 ;badge-11"));
    assertThat(decoder.decode(utf8("S;x;")))
        .containsExactly(new Scanned("x", Optional.of("badge-07"), "S;x;"));
    assertThat(decoder.decode(utf8("S; ;badge-11")))
        .containsExactly(
            new Malformed(
                "the message has no scan, which is required", Sample.of(utf8("S; ;badge-11"))));
    String longest = "S;" + "x".repeat(513) + ";";
    assertThat(decoder.decode(utf8(longest)))
        .containsExactly(
            new Malformed(
                "scan has 513 characters; 1 to 512 are allowed", Sample.of(utf8(longest))));
    assertThat(Replies.accepted(profile, "open")).contains(utf8("open"));
  }

  @Test
  void whatOnlyReadingsHaveIsRefusedBesideAScan() {
    assertFaults(
        SCANNER.replace("\"operator\"]", "\"torque\"]"),
        "p.toml:8:1: torque stands beside scan, and no message is both;"
            + " beside scan only operator is allowed");
    assertFaults(
        SCANNER.replace("operator = \"badge-07\"", "decimal-comma = true"),
        "p.toml:9:1: [values] is about readings, and this message gives scans;"
            + " only a fixed operator is allowed");
    assertFaults(
        SCANNER + "[time]\nformat = \"yyyy-MM-dd HH:mm:ss\"\nzone = \"UTC\"\n",
        "p.toml:13:1: [time] is about readings, and this message gives scans; remove it");
    assertFaults(
        SCANNER.replace("{meaning}", "{verdict}"),
        "p.toml:12:1: unknown placeholder {verdict}; allowed are {meaning}");
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void everyPartOfAProfileIsRead() {
    Profile profile =
        parse(
            """
            [profile]
            name = "p"
            charset = "latin1"
            [frame]
            start = "\\u00ab"
            end = "\\r\\n"
            [checksum]
            kind = "sum8"
            pattern = '(?P<over>.*)#(?P<sum>..)'
            [message]
            form = "json"
            pointers = { torque = "/peak/value" }
            [values]
            decimal-comma = true
            wrench = "TW-0417"
            unit = "lbf.ft"
            direction = "ccw"
            operator = "badge-07"
            unit-names = { "NM" = "N.m" }
            direction-names = { "R" = "cw" }
            [time]
            format = "dd.MM.yyyy HH:mm"
            zone = "Europe/Zurich"
            [poll]
            send = "READ\\r\\n"
            every = "2 s"
            [reply]
            refused = "N"
            """);
    assertThat(profile.frame())
        .contains(
            new FrameRule.Between(
                Bytes.of(new byte[] {(byte) 0xAB}), Bytes.of(new byte[] {13, 10}), 1024));
    assertThat(profile.checksum().orElseThrow().kind()).isEqualTo(ChecksumKind.SUM8);
    assertThat(profile.form())
        .isEqualTo(new Pointers(Map.of(EventField.TORQUE, Pointer.parse("/peak/value"))));
    assertThat(profile.values())
        .isEqualTo(
            new Values(
                true,
                Map.of(
                    EventField.WRENCH, "TW-0417",
                    EventField.UNIT, "lbf.ft",
                    EventField.DIRECTION, "ccw",
                    EventField.OPERATOR, "badge-07"),
                Map.of("NM", TorqueUnit.NEWTON_METRE),
                Map.of("R", Direction.CW)));
    assertThat(profile.time()).isPresent();
    assertThat(profile.poll())
        .contains(
            new Poll(
                Bytes.of("READ\r\n".getBytes(StandardCharsets.US_ASCII)), Duration.ofSeconds(2)));
    assertThat(profile.reply().refused()).contains(new ReplyText("N"));
  }

  @Test
  void aFrameMayHaveAFixedLength() {
    assertThat(parse(LEAST + "[frame]\nlength = 32\n").frame())
        .contains(new FrameRule.OfLength(32));
  }

  @Test
  void anEmptyFileLacksItsTwoTables() {
    assertFaults(
        "",
        "p.toml:1:1: there is no [profile]; write [profile] with a name",
        "p.toml:1:1: there is no [message]; write [message] with form = \"columns\", \"pattern\" or"
            + " \"json\"");
  }

  @Test
  void everyFaultIsNamedWithItsPositionAndWhatIsAllowed() {
    assertFaults(
        """
        [profile]
        name = " p"
        charset = "utf8"
        [frame]
        max = 0
        [checksum]
        kind = "crc16-modbuss"
        pattern = '(?P<over>.*)(?P<summ>..)'
        [message]
        form = "columns"
        delimiter = ""
        columns = ["'W'", "wrnch", "torque", "torque"]
        pattern = "x"
        [values]
        unit = "Nm"
        direction = "left"
        unit-names = { "NM" = "n.m" }
        direction-names = { "R" = "right" }
        [time]
        zone = "Europe/Zuerich"
        [poll]
        send = ""
        every = "5 ms"
        [reply]
        accepted = "{wrnch}"
        refused = "{event}"
        [extra]
        """,
        "p.toml:2:1: profile name must be 1 to 64 printable characters without blanks at the ends;"
            + " write name = \"...\", 1 to 64 printable characters",
        "p.toml:3:1: unknown charset \"utf8\"; \"utf-8\" or \"latin1\" is allowed",
        "p.toml:4:1: it is not said where a frame ends; write end, or start and end, or length:"
            + " exactly one of these ways",
        "p.toml:5:1: max 0 is out of range; 1 to 65536 is allowed",
        "p.toml:7:1: unknown checksum \"crc16-modbuss\"; did you mean \"crc16-modbus\"?",
        "p.toml:8:1: the pattern has not both groups \"over\" and \"sum\"; write a pattern with the"
            + " groups (?P<over>...), the bytes summed, and (?P<sum>...), the hexadecimal digits",
        "p.toml:11:1: the delimiter is empty; write the text between two columns",
        "p.toml:12:1: nothing gives the wrench; name it in columns, or fix it in [values]",
        "p.toml:12:1: nothing gives the unit; name it in columns, or fix it in [values]",
        "p.toml:12:19: column 2, \"wrnch\", is no field; did you mean \"wrench\"?",
        "p.toml:12:38: \"torque\" is a column twice; write \"-\" for one to skip",
        "p.toml:13:1: \"pattern\" has no use with form = \"columns\"; remove it",
        "p.toml:15:1: unknown unit \"Nm\"; allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
        "p.toml:16:1: unknown direction \"left\"; \"cw\" or \"ccw\" is allowed",
        "p.toml:17:16: unknown unit \"n.m\"; allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
        "p.toml:18:21: unknown direction \"right\"; \"cw\" or \"ccw\" is allowed",
        "p.toml:19:1: time has no \"format\"; write a pattern of date, time and offset like"
            + " \"dd.MM.yyyy HH:mm:ssXXX\", or one without offset and a zone",
        "p.toml:20:1: unknown zone \"Europe/Zuerich\"; write a zone like \"Europe/Zurich\" or"
            + " \"+01:00\"",
        "p.toml:22:1: there is nothing to send; write the text that asks the wrench",
        "p.toml:23:1: \"5 ms\" is out of range; write \"N ms\" or \"N s\", 10 ms to 3600 s",
        "p.toml:25:1: unknown placeholder {wrnch}; allowed are {wrench} {event} {verdict}"
            + " {fastener} {effect}",
        "p.toml:26:1: a refusal knows nothing to fill in; write a text without placeholders",
        "p.toml:27:1: unknown key \"extra\" in the file; allowed are checksum, frame, message, poll,"
            + " profile, reply, time, values");
  }

  @Test
  void waysOfFramingThatContradictAreFaults() {
    String ways = "; write end, or start and end, or length: exactly one of these ways";
    assertFaults(
        LEAST + "[frame]\nstart = \"<\"\n", "p.toml:8:1: a frame has a start but no end" + ways);
    assertFaults(
        LEAST + "[frame]\nlength = 8\nend = \"x\"\nmax = 9\n",
        "p.toml:9:1: \"end\" has no use beside \"length\"" + ways,
        "p.toml:10:1: \"max\" has no use beside \"length\"" + ways);
    assertFaults(
        LEAST + "[frame]\nstart = \"<\"\nend = \"<\"\n",
        "p.toml:8:1: start and end contain one another; neither may contain the other");
    assertFaults(
        LEAST + "[frame]\nend = \"\"\n",
        "p.toml:8:1: \"end\" has 0 bytes; a text of 1 to 16 bytes is allowed");
    assertFaults(
        LEAST.replace("\"p\"", "\"p\"\ncharset = \"latin1\"") + "[frame]\nend = \"\\u20ac\"\n",
        "p.toml:9:1: \"\u20ac\" cannot be written in ISO-8859-1; a text of 1 to 16 bytes is"
            + " allowed");
  }

  @Test
  void whatOnlySerialLinesHaveNeedsAFrame() {
    assertFaults(
        LEAST + "[poll]\nsend = \"R\"\nevery = \"1 s\"\n[reply]\n",
        "p.toml:7:1: [poll] is for serial lines, and there is no [frame]; write [frame], or remove"
            + " [poll]",
        "p.toml:10:1: [reply] says nothing; write accepted, refused, or both",
        "p.toml:10:1: [reply] is for serial lines, and there is no [frame]; write [frame], or"
            + " remove [reply]");
  }

  @Test
  void patternsAreCheckedAsPatternsAndForTheirGroups() {
    String head = "[profile]\nname = \"p\"\n[message]\nform = \"pattern\"\n";
    String allowed = "; write a pattern whose named groups are fields, e.g. (?P<torque>[0-9.]+)";
    assertFaults(head, "p.toml:3:1: message has no \"pattern\"" + allowed);
    assertFaults(
        head + "pattern = '(?P<wrench>'",
        "p.toml:5:1: not a pattern: missing closing ) at \"(?P<wrench>\"" + allowed);
    assertFaults(
        head + "pattern = '(x)\\1'",
        "p.toml:5:1: not a pattern: invalid escape sequence at \"\\1\"" + allowed);
    assertFaults(
        head + "pattern = '" + "x".repeat(1001) + "'",
        "p.toml:5:1: a pattern of 1001 characters is longer than 1000" + allowed);
    assertFaults(
        head + "pattern = '(?P<wrench>.) (?P<units>.) (?P<unit>.)'",
        "p.toml:5:1: the group \"units\" is no field; did you mean \"unit\"?",
        "p.toml:5:1: nothing gives the torque; name it in pattern");
  }

  @Test
  void pointersAreCheckedAsPointersAndForTheirFields() {
    String head = "[profile]\nname = \"p\"\n[message]\nform = \"json\"\n";
    assertFaults(
        head,
        "p.toml:3:1: message has no \"pointers\"; write pointers = { wrench = \"/...\", torque ="
            + " \"/...\", unit = \"/...\" }");
    assertFaults(
        head + "pointers = { wrench = \"/w\", torque = \"peak\", unit = \"/u\", angel = \"/a\" }",
        "p.toml:5:1: nothing gives the torque; name it in pointers",
        "p.toml:5:29: \"peak\" does not begin with /; write a JSON Pointer like \"/peak/value\""
            + " (RFC 6901)",
        "p.toml:5:59: \"angel\" is no field; did you mean \"angle\"?");
  }

  @Test
  void anUnknownFormIsAFault() {
    assertFaults(
        "[profile]\nname = \"p\"\n[message]\nform = \"column\"\n",
        "p.toml:4:1: unknown form \"column\"; did you mean \"columns\"?");
  }

  @Test
  void aTimeFormatNeedsDateTimeAndExactlyOneZone() {
    String allowed =
        "; write a pattern of date, time and offset like \"dd.MM.yyyy HH:mm:ssXXX\", or one without"
            + " offset and a zone";
    assertFaults(
        LEAST + "[time]\nformat = \"dd.MM.yyyy HH:mm\"",
        "p.toml:8:1: \"dd.MM.yyyy HH:mm\" has no offset and there is no zone" + allowed);
    assertFaults(
        LEAST + "[time]\nformat = \"dd.MM.yyyy HH:mmXXX\"\nzone = \"Z\"",
        "p.toml:8:1: \"dd.MM.yyyy HH:mmXXX\" has an offset, and there is a zone too" + allowed);
    assertFaults(
        LEAST + "[time]\nformat = \"HH:mm\"\nzone = \"Z\"",
        "p.toml:8:1: \"HH:mm\" gives no full date and time" + allowed);
    assertFaults(
        LEAST + "[time]\nformat = \"dd.MM.yyyy hh:mm\"\nzone = \"Z\"",
        "p.toml:8:1: \"dd.MM.yyyy hh:mm\" gives no full date and time" + allowed);
    assertFaults(
        LEAST + "[time]\nformat = \"jj\"\nzone = \"Z\"",
        "p.toml:8:1: Unknown pattern letter: j" + allowed);
  }
}
