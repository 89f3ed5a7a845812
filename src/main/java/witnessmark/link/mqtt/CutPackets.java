package witnessmark.link.mqtt;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import witnessmark.link.Cut;

/**
 * A broker's packets as they come, but for messages of more than {@link #MOST} bytes: their
 * payload, of which MQTT 3.1.1 allows 256 MiB, is read without being kept, and a mark stands in its
 * place. The library behind would take memory for it twice over, and MQTT 3.1.1 has no way to tell
 * a broker how much is too much.
 */
final class CutPackets {
  /** More than any payload that is read, with its topic. */
  static final int MOST = 5 << 20;

  private static final int PUBLISH = 3;
  private static final int MARK = 24;

  private final SecureRandom random = new SecureRandom();
  private final Map<String, Cut> cuts = new ConcurrentHashMap<>();

  /** What stood in place of this payload; it is forgotten then. */
  Optional<Cut> of(byte[] payload) {
    return payload.length == MARK
        ? Optional.ofNullable(cuts.remove(HexFormat.of().formatHex(payload)))
        : Optional.empty();
  }

  /** The stream with its large payloads cut. */
  InputStream of(InputStream in) {
    return new Stream(new DataInputStream(in));
  }

  private byte[] markOf(Cut cut) {
    byte[] mark = new byte[MARK];
    random.nextBytes(mark);
    cuts.put(HexFormat.of().formatHex(mark), cut);
    return mark;
  }

  private static void length(ByteArrayOutputStream out, int remaining) {
    int rest = remaining;
    do {
      int seven = rest & 0x7f;
      rest >>>= 7;
      out.write(rest > 0 ? seven | 0x80 : seven);
    } while (rest > 0);
  }

  private final class Stream extends InputStream {
    private final DataInputStream in;
    private byte[] ready = new byte[0];
    private int at;
    private int passing;

    Stream(DataInputStream in) {
      this.in = in;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      int read = read(one, 0, 1);
      return read < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
      if (most == 0) {
        return 0;
      }
      if (at == ready.length && passing == 0 && !next()) {
        return -1;
      }
      if (at < ready.length) {
        int given = Math.min(most, ready.length - at);
        System.arraycopy(ready, at, into, from, given);
        at += given;
        return given;
      }
      int read = in.read(into, from, Math.min(most, passing));
      passing -= Math.max(0, read);
      return read;
    }

    @Override
    public int available() throws IOException {
      return ready.length - at + Math.min(passing, in.available());
    }

    @Override
    public void close() throws IOException {
      in.close();
    }

    /** Begins the next packet; false at the stream's end. */
    private boolean next() throws IOException {
      int first = in.read();
      if (first < 0) {
        return false;
      }
      int remaining = remaining();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      if (remaining > MOST) {
        out.writeBytes(cut(first, remaining));
      } else {
        out.write(first);
        length(out, remaining);
        passing = remaining;
      }
      ready = out.toByteArray();
      at = 0;
      return true;
    }

    /** MQTT 3.1.1, section 2.2.3: seven bits a byte, the least first, four bytes at most. */
    private int remaining() throws IOException {
      int remaining = 0;
      for (int shift = 0; shift < 28; shift += 7) {
        int next = in.readUnsignedByte();
        remaining |= (next & 0x7f) << shift;
        if (next < 0x80) {
          return remaining;
        }
      }
      throw new IOException("a packet's length has more than four bytes");
    }

    /** MQTT 3.1.1, section 3.3: topic, for QoS above 0 a packet id, and the payload. */
    private byte[] cut(int first, int remaining) throws IOException {
      if (first >> 4 != PUBLISH) {
        throw new IOException("a packet of " + remaining + " bytes that is no message");
      }
      byte[] topic = new byte[in.readUnsignedShort()];
      in.readFully(topic);
      byte[] id = new byte[(first & 0b110) == 0 ? 0 : 2];
      in.readFully(id);
      byte[] mark = markOf(swallowed(remaining - 2 - topic.length - id.length));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      out.write(first);
      length(out, 2 + topic.length + id.length + mark.length);
      out.write(topic.length >> 8);
      out.write(topic.length);
      out.writeBytes(topic);
      out.writeBytes(id);
      out.writeBytes(mark);
      return out.toByteArray();
    }

    private Cut swallowed(int length) throws IOException {
      MessageDigest digest = sha256();
      byte[] head = new byte[Cut.KEPT];
      in.readFully(head);
      digest.update(head);
      byte[] buffer = new byte[64 << 10];
      for (int left = length - head.length; left > 0; ) {
        int read = in.read(buffer, 0, Math.min(left, buffer.length));
        if (read < 0) {
          throw new IOException("the connection ended within a message of " + length + " bytes");
        }
        digest.update(buffer, 0, read);
        left -= read;
      }
      return new Cut(head, length, HexFormat.of().formatHex(digest.digest()));
    }

    private static MessageDigest sha256() {
      try {
        return MessageDigest.getInstance("SHA-256");
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }
  }
}
