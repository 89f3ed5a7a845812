package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.PtyPair;
import witnessmark.bench.Workshop;

/**
 * A wrench played by hand on a serial cable that speaks demo-data/profiles/demo-line.toml, by
 * docs/simulator-line.md.
 */
class ByHandSerialIT {
  private static final Duration LONG = Duration.ofSeconds(20);

  @TempDir Path directory;
  private PtyPair cable;
  private Workshop shop;
  private DaemonProcess daemon;

  @BeforeEach
  void begin() {
    cable = PtyPair.plug(directory);
    shop = Workshop.furnished(directory).on(cable, "bench-1");
    shop.open("RAM-210", "ATR-26-0147", "bench-1");
    shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
    // Bytes before the port is open would be the pseudo-terminal's, not the bridge's, to keep.
    daemon = shop.daemon().awaitUp("line");
  }

  @AfterEach
  void end() {
    daemon.close();
    cable.close();
  }

  @Test
  void everyFrameIsAnsweredOnceItIsOnRecord() {
    assertThat(answer(frame("TW-0417|1||32.54|N.m|41.2|cw"))).isEqualTo("A|TW-0417|1|in-band\r\n");
    assertRecorded(1, "carrier-left/1", "in-band", "credited");
    assertThat(answer(frame("TW-0417|2||25.0|N.m|30|cw")))
        .isEqualTo("A|TW-0417|2|under-torque\r\n");
    assertRecorded(2, "carrier-left/3", "under-torque", "again");
    assertThat(answer(frame("TW-0417|2||25.0|N.m|30|cw"))).isEqualTo("A|TW-0417|2|repeat\r\n");
    assertThat(answer(frame("TW-9999|7||33|N.m|25|cw"))).isEqualTo("A|TW-9999|7|unjudged\r\n");
    assertThat(answer(frame("TW-0417|3||40.0|N.m|25|cw"))).isEqualTo("A|TW-0417|3|over-torque\r\n");
    assertRecorded(3, "carrier-left/3", "over-torque", "nonconforming");
    shop.run(
        "dispose",
        "J-5",
        "carrier-left/3",
        "--as",
        "replace",
        "--by",
        "badge-11",
        "--because",
        "x");
    assertThat(answer(frame("TW-0417|4||30.0|N.m||ccw"))).isEqualTo("A|TW-0417|4|unjudged\r\n");
    assertThat(shop.entry(12).path("effect").asText()).isEqualTo("loosened");
    assertThat(answer(frame("TW-0417|5||33.0|N.m|41|cw"))).isEqualTo("A|TW-0417|5|in-band\r\n");
    assertThat(shop.entry(13).path("source").asText()).isEqualTo("serial:line");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 14 entries");
  }

  @Test
  void whatCannotBeReadIsRefusedAndTheNextGoodFrameIsTaken() {
    String good = frame("TW-0417|1||32.54|N.m|41.2|cw");
    String wrongSum = good.substring(0, good.length() - 6) + "0000\r\n";
    assertThat(answer(wrongSum)).isEqualTo("N|refused\r\n");
    assertRefused(
        7, wrongSum.stripTrailing(), "the checksum is 0000 but its bytes give " + sum(good));
    String tooLong = "W|TW-0417|1|" + "x".repeat(300) + "\r\n";
    assertThat(answer(tooLong)).isEqualTo("N|refused\r\n");
    assertRefused(8, tooLong, "a frame of 312 bytes; at most 256 are allowed");
    // a line cut in the middle: its rest and the next frame come as one
    assertThat(answer(good.substring(0, 20) + good)).isEqualTo("N|refused\r\n");
    assertThat(shop.entry(9).path("kind").asText()).isEqualTo("refused");
    assertThat(shop.entry(9).path("length").asInt()).isEqualTo(20 + good.length() - 2);
    assertThat(answer(good)).isEqualTo("A|TW-0417|1|in-band\r\n");
    assertRecorded(1, "carrier-left/1", "in-band", "credited");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 11 entries");
  }

  @Test
  void aPulledCableCostsOnlyTheFrameThatWasUnderWay() {
    // The answer to the whole frame shows that the half one, written with it, has arrived, too.
    assertThat(answer(frame("TW-0417|1||32.54|N.m|41.2|cw") + "W|TW-0417|2||33."))
        .isEqualTo("A|TW-0417|1|in-band\r\n");
    cable.pull();
    await().atMost(LONG).until(() -> shop.ledger().number("SELECT max(n) FROM entry;") == 8);
    assertRefused(8, "W|TW-0417|2||33.", "the line closed 16 bytes into a frame");
    cable.plug();
    await().atMost(LONG).until(() -> daemon.log().split("detail=\"listening on", -1).length == 3);
    assertThat(answer(frame("TW-0417|2||33.0|N.m|41|cw"))).isEqualTo("A|TW-0417|2|in-band\r\n");
    assertRecorded(2, "carrier-left/3", "in-band", "credited");
    assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 10 entries");
  }

  /** Types the bytes; the line that comes back. */
  private String answer(String bytes) {
    cable.write(bytes.getBytes(US_ASCII));
    StringBuilder line = new StringBuilder();
    while (line.indexOf("\r\n") < 0) {
      byte[] next = cable.read(1, LONG);
      assertThat(next).as("after " + line).hasSize(1);
      line.append((char) next[0]);
    }
    return line.toString();
  }

  /** A frame with the checksum of the document: CRC-16/MODBUS of what is before the last bar. */
  static String frame(String fields) {
    String over = "W|" + fields;
    int crc = 0xFFFF;
    for (byte b : over.getBytes(US_ASCII)) {
      crc ^= b & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xA001;
      }
    }
    return String.format("%s|%04X\r\n", over, crc);
  }

  private static String sum(String frame) {
    return frame.substring(frame.length() - 6, frame.length() - 2);
  }

  private void assertRecorded(int number, String fastener, String verdict, String effect) {
    List<String> rows =
        shop.ledger()
            .run(
                "SELECT fastener, verdict, effect FROM trace WHERE wrench = 'TW-0417' AND number = "
                    + number
                    + ";");
    assertThat(rows).containsExactly(fastener + "|" + verdict + "|" + effect);
  }

  private void assertRefused(long n, String sent, String reason) {
    byte[] head = Base64.getDecoder().decode(shop.entry(n).path("head").asText());
    assertThat(head).asString(US_ASCII).isEqualTo(sent);
    assertThat(shop.entry(n).path("reason").asText()).isEqualTo(reason);
  }
}
