package witnessmark.decode;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Random;

/** Makes bad bytes of good ones: some mutated, some random. */
final class Mutations {
  private static final byte[] TELLING =
      "{}[]\":,\\|;\r\n\u0000\u0002\u0003-+.eE09 tnfu/".getBytes(StandardCharsets.US_ASCII);

  private final Random random;

  Mutations(Random random) {
    this.random = random;
  }

  /** The good bytes with one to four changes, or random bytes one time in eight. */
  byte[] of(byte[] good) {
    if (random.nextInt(8) == 0) {
      byte[] bytes = new byte[random.nextInt(200)];
      random.nextBytes(bytes);
      return bytes;
    }
    byte[] bytes = good;
    for (int changes = 1 + random.nextInt(4); changes > 0; changes--) {
      bytes = changed(bytes);
    }
    return bytes;
  }

  private byte[] changed(byte[] bytes) {
    int from = random.nextInt(bytes.length + 1);
    int to = Math.min(bytes.length, from + random.nextInt(6));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, from);
    switch (random.nextInt(6)) {
      case 0 -> to = from + flipped(bytes, from, out);
      case 1 -> out.write(TELLING[random.nextInt(TELLING.length)]);
      case 2 -> out.write(random.nextInt(256));
      case 3 -> to = random.nextInt(10) == 0 ? bytes.length : to;
      case 4 -> {
        out.write(bytes, from, to - from);
        out.write(bytes, from, to - from);
      }
      default -> {
        out.write(TELLING[random.nextInt(TELLING.length)]);
        to = from;
      }
    }
    out.write(bytes, to, bytes.length - to);
    return out.toByteArray();
  }

  private int flipped(byte[] bytes, int at, ByteArrayOutputStream out) {
    if (at == bytes.length) {
      return 0;
    }
    out.write(bytes[at] ^ 1 << random.nextInt(8));
    return 1;
  }
}
