package witnessmark.link.mqtt;

import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.security.SecureRandom;
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

  private final SecureRandom random = new SecureRandom();
  private final Map<ByteBuffer, Cut> cuts = new ConcurrentHashMap<>();

  /** What stood in place of this payload; it is forgotten then. */
  Optional<Cut> of(byte[] payload) {
    return payload.length == Swallow.MARK
        ? Optional.ofNullable(cuts.remove(ByteBuffer.wrap(payload)))
        : Optional.empty();
  }

  /** The stream with its large payloads cut. */
  InputStream of(InputStream in) {
    return new Stream(in);
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
    private final InputStream in;
    private byte[] ready = new byte[0];
    private int at;
    private int passing;
    private Swallow swallow;

    Stream(InputStream in) {
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
      if (at == ready.length && passing == 0 && swallow == null && !next()) {
        return -1;
      }
      if (at < ready.length) {
        int given = Math.min(most, ready.length - at);
        System.arraycopy(ready, at, into, from, given);
        at += given;
        return given;
      }
      if (swallow != null) {
        into[from] = swallow.next(this::patiently);
        swallowed();
        return 1;
      }
      int read = in.read(into, from, Math.min(most, passing));
      passing -= Math.max(0, read);
      return read;
    }

    private void swallowed() {
      if (swallow.ended()) {
        cuts.put(ByteBuffer.wrap(swallow.mark()), swallow.cut());
        swallow = null;
      }
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
      out.write(first);
      if (remaining > MOST) {
        cut(first, remaining, out);
      } else {
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
        int next = exactly(1)[0] & 0xff;
        remaining |= (next & 0x7f) << shift;
        if (next < 0x80) {
          return remaining;
        }
      }
      throw new IOException("a packet's length has more than four bytes");
    }

    /** MQTT 3.1.1, section 3.3: topic, for QoS above 0 a packet id, and the payload. */
    private void cut(int first, int remaining, ByteArrayOutputStream out) throws IOException {
      if (first >> 4 != PUBLISH) {
        throw new IOException("a packet of " + remaining + " bytes that is no message");
      }
      byte[] size = exactly(2);
      byte[] topic = exactly((size[0] & 0xff) << 8 | size[1] & 0xff);
      byte[] id = exactly((first & 0b110) == 0 ? 0 : 2);
      int before = size.length + topic.length + id.length;
      byte[] mark = new byte[Swallow.MARK];
      random.nextBytes(mark);
      swallow = new Swallow(remaining - before, mark);
      length(out, before + mark.length);
      out.writeBytes(size);
      out.writeBytes(topic);
      out.writeBytes(id);
    }

    private byte[] exactly(int length) throws IOException {
      byte[] bytes = new byte[length];
      for (int at = 0; at < length; ) {
        at += patiently(bytes, at, length - at);
      }
      return bytes;
    }

    /** The library's sockets give up after a second; a packet that has begun is waited for. */
    private int patiently(byte[] into, int from, int most) throws IOException {
      while (true) {
        try {
          int read = in.read(into, from, most);
          if (read < 0) {
            throw new EOFException("the connection ended within a packet");
          }
          return read;
        } catch (SocketTimeoutException e) {
          // when the link gives the connection up, it closes the socket, and this ends, too
        }
      }
    }
  }
}
