package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.torque.Angle;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.TorqueUnit;

class DemoProfilesTest {
  private static final Path PROFILES = Path.of("demo-data", "profiles");

  static Profile profile(String name) throws IOException {
    String file = name + ".toml";
    return ProfileFile.parse(file, Files.readString(PROFILES.resolve(file)));
  }

  /** What the captured bytes of a serial line decode to; broken frames as malformed. */
  private static List<Decoded> captured(String name) throws IOException {
    Profile profile = profile(name);
    byte[] bytes = Files.readAllBytes(PROFILES.resolve(name + ".bin"));
    Framer framer = new Framer(profile.frame().orElseThrow());
    List<Frame> frames = new ArrayList<>(framer.feed(bytes, bytes.length));
    frames.addAll(framer.end());
    List<Decoded> decoded = new ArrayList<>();
    for (Frame frame : frames) {
      if (frame instanceof Whole whole) {
        decoded.addAll(new ProfileDecoder(profile).decode(whole.bytes()));
      } else if (frame instanceof Broken broken) {
        decoded.add(new Malformed(broken.reason(), broken.sample()));
      }
    }
    return decoded;
  }

  private static TorqueEvent event(
      String wrench, long number, String time, String torque, String angle, Direction direction) {
    return new TorqueEvent(
        wrench,
        OptionalLong.of(number),
        Optional.ofNullable(time).map(Instant::parse),
        Torque.parse(torque),
        Optional.ofNullable(angle).map(Angle::of),
        direction,
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void theFrameInTheSimulatorsDocumentIsAnEvent() throws IOException {
    String document = Files.readString(Path.of("docs", "simulator-line.md"));
    String frame =
        document.lines().filter(l -> l.startsWith("    W|")).findFirst().orElseThrow().strip();
    assertThat(
            new ProfileDecoder(profile("demo-line"))
                .decode(frame.getBytes(StandardCharsets.US_ASCII)))
        .containsExactly(
            new Torqued(
                event(
                    "TW-0417", 123, "2026-11-25T10:02:03.120Z", "32.54 N.m", "41.2", Direction.CW),
                frame));
  }

  @Test
  void theCapturedDemoLineHasThreeEventsAndOneWrongChecksum() throws IOException {
    List<Decoded> decoded = captured("demo-line");
    assertThat(decoded).hasSize(4);
    assertThat(decoded.get(0)).isEqualTo(decoded.get(3));
    assertThat(((Torqued) decoded.get(1)).event())
        .isEqualTo(event("TW-0417", 124, null, "32.50 N.m", null, Direction.CW));
    String bad = "W|TW-0417|125|2026-11-25T10:02:09Z|33.1|N.m|40.0|cw|0000";
    int sum =
        ChecksumKind.CRC16_MODBUS.of(
            bad.substring(0, bad.length() - 5).getBytes(StandardCharsets.US_ASCII));
    assertThat(decoded.get(2))
        .isEqualTo(
            new Malformed(
                String.format("the checksum is 0000 but its bytes give %04X", sum),
                Sample.of(bad.getBytes(StandardCharsets.US_ASCII))));
  }

  @Test
  void theDemoLinesRepliesAreThoseOfTheSimulatorsDocument() throws IOException {
    Profile profile = profile("demo-line");
    assertThat(
            Replies.accepted(
                profile, "TW-0417", OptionalLong.of(123), "in-band", Optional.empty(), "credited"))
        .hasValueSatisfying(b -> assertThat(b).asString().isEqualTo("A|TW-0417|123|in-band\r\n"));
    assertThat(Replies.refused(profile))
        .hasValueSatisfying(b -> assertThat(b).asString().isEqualTo("N|refused\r\n"));
  }

  @Test
  void theCapturedCommaLineHasTwoEventsWithNoiseBetween() throws IOException {
    List<Decoded> decoded = captured("comma-line");
    assertThat(decoded).hasSize(3);
    assertThat(decoded.get(0))
        .isEqualTo(
            new Torqued(
                event("TW-0418", 123, "2026-11-25T10:02:03Z", "32.54 N.m", "41.2", Direction.CW),
                "Nr 00123 25.11.2026 11:02:03 R  32,54 NM  41,2 Grad"));
    assertThat(decoded.get(1))
        .isEqualTo(
            new Malformed(
                "8 bytes between frames; a frame has a start and an end",
                Sample.of("\u00ff\u00fe noise".getBytes(StandardCharsets.ISO_8859_1))));
    assertThat(((Torqued) decoded.get(2)).event())
        .isEqualTo(
            event("TW-0418", 124, "2026-11-25T10:02:41Z", "24.00 lbf.ft", null, Direction.CCW));
  }

  @Test
  void theCapturedScannerLineHasFourScansAndTwoUnreadableFrames() throws IOException {
    assertThat(captured("scanner-line"))
        .containsExactly(
            new Scanned("badge-07", Optional.empty(), "badge-07"),
            new Scanned("ATR-26-0147", Optional.empty(), "ATR-26-0147"),
            new Malformed(
                "the bytes are not UTF-8 from byte 1 on",
                Sample.of(new byte[] {(byte) 0xFF, (byte) 0xFE})),
            new Scanned("carrier-left/3", Optional.empty(), "carrier-left/3"),
            new Malformed(
                "the frame \"?01042\" does not match the profile's pattern",
                Sample.of("\u001d01042".getBytes(StandardCharsets.US_ASCII))),
            new Scanned("wm:close", Optional.empty(), "wm:close"));
    Profile profile = profile("scanner-line");
    assertThat(Replies.accepted(profile, "close")).contains(new byte[] {6});
    assertThat(Replies.refused(profile)).contains(new byte[] {0x15});
  }

  @Test
  void theCapturedJsonHasTwoEventsAndOneWithoutAReading() throws IOException {
    byte[] payload = Files.readAllBytes(PROFILES.resolve("nested-json.json"));
    List<Decoded> decoded = new ProfileDecoder(profile("nested-json")).decode(payload);
    assertThat(decoded).hasSize(3);
    Torqued first = (Torqued) decoded.get(0);
    assertThat(first.raw()).startsWith("{\"tool\":").endsWith("\"battery\":81}");
    assertThat(first.event())
        .isEqualTo(
            new TorqueEvent(
                "TW-0419",
                OptionalLong.of(7),
                Optional.of(Instant.parse("2026-11-25T10:02:03Z")),
                Torque.of("32.50", TorqueUnit.NEWTON_METRE),
                Optional.of(Angle.of("41.2")),
                Direction.CW,
                Optional.empty(),
                Optional.of("badge-07")));
    assertThat(((Torqued) decoded.get(1)).event())
        .isEqualTo(event("TW-0419", 8, null, "24.0 lbf.ft", null, Direction.CW));
    assertThat(decoded.get(2))
        .isInstanceOfSatisfying(
            Malformed.class,
            m ->
                assertThat(m.reason())
                    .isEqualTo("torque is true or false; a text or a number is allowed"));
  }
}
