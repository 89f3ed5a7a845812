package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import witnessmark.decode.Broken;
import witnessmark.decode.Decoded;
import witnessmark.decode.Frame;
import witnessmark.decode.Framer;
import witnessmark.decode.Malformed;
import witnessmark.decode.Messages;
import witnessmark.decode.ProfileDecoder;
import witnessmark.decode.ProfileFile;

/** Sends every kind of bytes that cannot be taken. */
final class ByteSentences {
  private static final String COLUMNS =
      """
      [profile]
      name = "p"
      [message]
      form = "columns"
      delimiter = "|"
      columns = ["'W'", "wrench", "torque", "unit", "time"]
      [values]
      decimal-comma = true
      [time]
      format = "dd.MM.yyyy HH:mm:ss"
      zone = "Europe/Zurich"
      """;

  private final List<Said> said = new ArrayList<>();

  private ByteSentences() {}

  static List<Said> all() {
    ByteSentences all = new ByteSentences();
    all.payloads();
    all.events();
    all.scans();
    all.profiles();
    all.frames();
    return all.said;
  }

  private void refused(String code, List<Decoded> decoded) {
    List<String> reasons =
        decoded.stream()
            .filter(Malformed.class::isInstance)
            .map(d -> ((Malformed) d).reason())
            .toList();
    assertThat(reasons).as(code).isNotEmpty();
    said.add(new Said("## Bytes that are refused", code, reasons.get(0)));
  }

  private void payload(String code, String text) {
    refused(code, Messages.torque(text.getBytes(StandardCharsets.UTF_8)));
  }

  private void payloads() {
    refused("payload", Messages.torque(new byte[] {'{', (byte) 0xFF}));
    refused("payload", Messages.torque(new byte[4 * 1024 * 1024 + 1]));
    payload("payload", "");
    payload("payload", "7");
    payload("payload", "{\"wrench\":");
    payload("payload", "{} {}");
    payload("payload", "[".repeat(1100));
    payload("burst", "[]");
    payload("burst", "[" + "{},".repeat(10_000) + "{}]");
    payload("element", "[7]");
    payload("element", "{\"wrench\":\"a\",\"wrench\":\"b\"}");
    payload("element", "{\"x\":" + "[".repeat(40) + "]".repeat(40) + "}");
    payload("element", "{\"x\":\"" + "x".repeat(9000) + "\"}");
  }

  /** An event that is good but for its own field. */
  private void event(String code, String field) {
    String good = "{\"wrench\":\"TW-0417\",\"torque\":\"32.54\",\"unit\":\"N.m\",\"x\":0}";
    String without = good.replaceAll("\"" + code + "\":\"[^\"]*\",", "");
    payload(code, without.replace("\"x\":0", field.isEmpty() ? "\"x\":0" : field));
  }

  private void events() {
    event("torque", "");
    event("wrench", "\"wrench\":\" TW-0417\"");
    event("torque", "\"torque\":\"32,54\"");
    event("torque", "\"torque\":true");
    event("torque", "\"torque\":\"-1\"");
    event("torque", "\"torque\":\"100001\"");
    event("unit", "\"unit\":\"Nm\"");
    event("event", "\"event\":-1");
    event("event", "\"event\":\"1\"");
    event("angle", "\"angle\":\"100001\"");
    event("direction", "\"direction\":\"left\"");
    event("operator", "\"operator\":7");
    event("time", "\"time\":\"25.11.2026\"");
    event("time", "\"time\":\"2026-11-25T10:02:60Z\"");
    event("time", "\"time\":\"2026-11-31T10:02:03Z\"");
    event("time", "\"time\":\"0000-01-01T00:00:00+01:00\"");
  }

  private void scans() {
    refused("scan", Messages.scan("{}".getBytes(StandardCharsets.UTF_8)));
    refused("scan", Messages.scan("{\"scan\":7}".getBytes(StandardCharsets.UTF_8)));
    refused("scan", Messages.scan("{\"scan\":\"\"}".getBytes(StandardCharsets.UTF_8)));
    refused("scan", Messages.scan("{\"scan\":\"\\ud83d\"}".getBytes(StandardCharsets.UTF_8)));
    refused(
        "scan",
        decoded(
            "[profile]\nname = \"p\"\n[message]\nform = \"pattern\"\npattern = '^S(?P<scan>.*)$'\n",
            "S "));
  }

  private static List<Decoded> decoded(String profile, String text) {
    return new ProfileDecoder(ProfileFile.parse("p.toml", profile))
        .decode(text.getBytes(StandardCharsets.UTF_8));
  }

  private void profiles() {
    String time = "|25.11.2026 11:02:03";
    refused("column", decoded(COLUMNS, "V|TW-0417|32,54|N.m" + time));
    refused("column", decoded(COLUMNS, "W|TW-0417|32,54|N.m"));
    refused("column", decoded(COLUMNS, "W|TW-0417|32,54|N.m" + time + "|"));
    refused("decimal-comma", decoded(COLUMNS, "W|TW-0417|32.54|N.m" + time));
    String line = "W|TW-0417|32,54|N.m|";
    refused("time", decoded(COLUMNS, line + "2026-11-25"));
    refused("time", decoded(COLUMNS, line + "29.03.2026 02:30:00"));
    refused("time", decoded(COLUMNS, line + "25.10.2026 02:30:00"));
    String shape =
        "[profile]\nname = \"p\"\n[message]\nform = \"pattern\"\n"
            + "pattern = '^(?P<wrench>\\S+) (?P<torque>\\S+) (?P<unit>\\S+)$'\n";
    refused("pattern", decoded(shape, "TW-0417 32.54"));
    String checked =
        shape + "[checksum]\nkind = \"sum8\"\npattern = '^(?P<over>.*)#(?P<sum>.*)$'\n";
    refused("checksum", decoded(checked, "TW-0417 32.54 N.m"));
    refused("checksum", decoded(checked, "TW-0417 32.54 N.m#xyz"));
    refused("checksum", decoded(checked, "TW-0417 32.54 N.m#00"));
    String json =
        "[profile]\nname = \"p\"\n[message]\nform = \"json\"\n"
            + "pointers = { wrench = \"/tool\", torque = \"/peak\", unit = \"/unit\" }\n";
    refused("pointer", decoded(json, "[7]"));
    refused("pointer", decoded(json, "{\"tool\":{},\"peak\":1,\"unit\":\"N.m\"}"));
  }

  private void frame(String rule, String bytes) {
    Framer framer =
        new Framer(ProfileFile.parse("p.toml", COLUMNS + "[frame]\n" + rule).frame().orElseThrow());
    byte[] line = bytes.getBytes(StandardCharsets.UTF_8);
    List<Frame> frames = new ArrayList<>(framer.feed(line, line.length));
    frames.addAll(framer.end());
    String reason =
        frames.stream()
            .filter(Broken.class::isInstance)
            .map(f -> ((Broken) f).reason())
            .findFirst()
            .orElseThrow();
    said.add(new Said("## Bytes that are refused", "frame", reason));
  }

  private void frames() {
    frame("end = \"\\n\"\nmax = 8\n", "123456789\n");
    frame("end = \"\\n\"\n", "12345");
    frame("length = 8\n", "12345");
    String between = "start = \"<\"\nend = \">\"\n";
    frame(between, "<123");
    frame(between, "<123<456>");
    frame(between, "noise<456>");
    frame(between, "<456>noise");
  }
}
