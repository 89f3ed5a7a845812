package witnessmark.link.mqtt;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import witnessmark.link.Cut;

/**
 * A payload being read past. A mark is given out in its place, byte by byte as it is read: so the
 * library, which counts the bytes it gets, does not take the connection for a dead one meanwhile.
 */
final class Swallow {
  /** The length of a mark; it is random, so that no message can be taken for one. */
  static final int MARK = 256;

  /** Reads up to so many bytes, at least one. */
  @FunctionalInterface
  interface Source {
    int read(byte[] into, int from, int most) throws IOException;
  }

  private final int length;
  private final byte[] mark;
  private final MessageDigest digest;
  private final ByteArrayOutputStream head = new ByteArrayOutputStream();
  private final byte[] buffer = new byte[64 << 10];
  private int read;
  private int given;

  Swallow(int length, byte[] mark) {
    this.length = length;
    this.mark = mark;
    try {
      this.digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** The next byte of the mark, once its part of the payload is read. */
  byte next(Source in) throws IOException {
    long due = (long) length * (given + 1) / MARK;
    while (read < due) {
      int more = in.read(buffer, 0, (int) Math.min(due - read, buffer.length));
      digest.update(buffer, 0, more);
      head.write(buffer, 0, Math.min(more, Cut.KEPT - head.size()));
      read += more;
    }
    return mark[given++];
  }

  boolean ended() {
    return given == MARK;
  }

  byte[] mark() {
    return mark;
  }

  /** What is known of it, once it has ended. */
  Cut cut() {
    return new Cut(head.toByteArray(), length, HexFormat.of().formatHex(digest.digest()));
  }
}
