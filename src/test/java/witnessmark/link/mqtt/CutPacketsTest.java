package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.link.Cut;

class CutPacketsTest {
  private static final byte[] PINGRESP = {(byte) 0xd0, 0};

  private final CutPackets packets = new CutPackets();

  private static byte[] publish(int qos, String topic, byte[] payload) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] name = topic.getBytes(StandardCharsets.UTF_8);
    out.write(0x30 | qos << 1);
    int rest = 2 + name.length + (qos > 0 ? 2 : 0) + payload.length;
    while (rest > 127) {
      out.write(rest & 0x7f | 0x80);
      rest >>>= 7;
    }
    out.write(rest);
    out.write(name.length >> 8);
    out.write(name.length);
    out.writeBytes(name);
    out.writeBytes(qos > 0 ? new byte[] {7, 9} : new byte[0]);
    out.writeBytes(payload);
    return out.toByteArray();
  }

  private static byte[] joined(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  private byte[] through(byte[] bytes) throws IOException {
    return packets.of(new ByteArrayInputStream(bytes)).readAllBytes();
  }

  @Test
  void whatIsNotTooLargePassesUnchangedInWhateverPieces() throws IOException {
    byte[] all =
        joined(
            PINGRESP,
            publish(1, "witnessmark/v1/bench-1/torque", new byte[300]),
            publish(0, "a", new byte[0]),
            publish(1, "b", new byte[CutPackets.MOST - 5]),
            PINGRESP);
    assertThat(through(all)).isEqualTo(all);
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    InputStream in = packets.of(new ByteArrayInputStream(all));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] piece = new byte[64 << 10];
    for (int read = 0; read >= 0; ) {
      out.write(piece, 0, read);
      read = random.nextInt(9) == 0 ? one(in, piece) : in.read(piece, 0, 1 + random.nextInt(9000));
    }
    assertThat(out.toByteArray()).as("seed %d", seed).isEqualTo(all);
  }

  private static int one(InputStream in, byte[] piece) throws IOException {
    int read = in.read();
    piece[0] = (byte) read;
    return read < 0 ? -1 : 1;
  }

  @Test
  void ofALargeMessageOnlyHeadLengthAndHashRemain() throws Exception {
    for (int qos = 0; qos <= 1; qos++) {
      byte[] payload = new byte[CutPackets.MOST + 77];
      new Random(qos).nextBytes(payload);
      byte[] all = through(joined(PINGRESP, publish(qos, "plant/x", payload), PINGRESP));
      byte[] mark = Arrays.copyOfRange(all, all.length - 258, all.length - 2);
      assertThat(all).isEqualTo(joined(PINGRESP, publish(qos, "plant/x", mark), PINGRESP));
      Cut cut = packets.of(mark).orElseThrow();
      assertThat(cut.length()).isEqualTo(payload.length);
      assertThat(cut.head()).isEqualTo(Arrays.copyOf(payload, 4096));
      byte[] sha256 = MessageDigest.getInstance("SHA-256").digest(payload);
      assertThat(cut.sha256()).isEqualTo(HexFormat.of().formatHex(sha256));
      assertThat(packets.of(mark)).as("given once").isEmpty();
    }
  }

  /** As the library's sockets do when nothing comes for a second. */
  @Test
  void aTimeoutAnywhereLosesNothing() throws IOException {
    byte[] payload = new byte[CutPackets.MOST + 77];
    byte[] all = joined(publish(1, "a", new byte[300]), publish(1, "plant/x", payload), PINGRESP);
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    InputStream halting =
        new FilterInputStream(new ByteArrayInputStream(all)) {
          @Override
          public int read() throws IOException {
            halt();
            return super.read();
          }

          @Override
          public int read(byte[] into, int from, int most) throws IOException {
            halt();
            return super.read(into, from, most);
          }

          private void halt() throws IOException {
            if (random.nextInt(3) == 0) {
              throw new SocketTimeoutException("Read timed out");
            }
          }
        };
    InputStream in = packets.of(halting);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] piece = new byte[1000];
    for (int read = 0; read >= 0; ) {
      out.write(piece, 0, read);
      read = again(in, piece);
    }
    byte[] came = out.toByteArray();
    byte[] mark = Arrays.copyOfRange(came, came.length - 258, came.length - 2);
    assertThat(came)
        .as("seed %d", seed)
        .isEqualTo(joined(publish(1, "a", new byte[300]), publish(1, "plant/x", mark), PINGRESP));
    assertThat(packets.of(mark).orElseThrow().length()).isEqualTo(payload.length);
  }

  private static int again(InputStream in, byte[] piece) throws IOException {
    try {
      return in.read(piece);
    } catch (SocketTimeoutException e) {
      return 0;
    }
  }

  @Test
  void nobodyElseCanSendAMark() {
    assertThat(packets.of(new byte[256])).isEmpty();
    assertThat(packets.of(new byte[0])).isEmpty();
  }

  @Test
  void aPacketThatCannotBeIsTheEndOfTheConnection() {
    byte[] large = publish(0, "a", new byte[CutPackets.MOST]);
    large[0] = (byte) 0x90;
    assertThatThrownBy(() -> through(large))
        .isInstanceOf(IOException.class)
        .hasMessage("a packet of 5242883 bytes that is no message");
    byte[] endless = {0x30, -1, -1, -1, -1, 1};
    assertThatThrownBy(() -> through(endless))
        .isInstanceOf(IOException.class)
        .hasMessage("a packet's length has more than four bytes");
    byte[] cutOff = Arrays.copyOf(publish(0, "a", new byte[CutPackets.MOST]), 9000);
    assertThatThrownBy(() -> through(cutOff))
        .isInstanceOf(IOException.class)
        .hasMessage("the connection ended within a packet");
  }
}
