package witnessmark.certificate;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * The colour space sRGB as an ICC profile of version 2 (ICC.1:2001-04), made here so that it is the
 * same bytes with every Java.
 *
 * <p>Curve: IEC 61966-2-1. Primaries and white are those of sRGB adapted to the profile connection
 * space's D50 by the Bradford transform, as commonly published, from memory.
 */
final class SrgbProfile {
  private static final int CURVE = 1024;
  private static final double[] WHITE = {0.9642, 1.0, 0.8249};
  private static final double[][] PRIMARIES = {
    {0.4360747, 0.2225045, 0.0139322},
    {0.3850649, 0.7168786, 0.0971045},
    {0.1430804, 0.0606169, 0.7141733}
  };
  private static final String NAME = "sRGB";
  private static final String RIGHTS = "No rights reserved";

  private static final int HEADER = 128;
  private static final int TAGS = 9;

  private SrgbProfile() {}

  static byte[] bytes() {
    byte[] name = description();
    byte[] rights = text();
    byte[] white = xyz(WHITE);
    byte[] curve = curve();
    int at = HEADER + 4 + 12 * TAGS;
    int size = at + name.length + rights.length + 4 * white.length + curve.length;
    ByteBuffer out = ByteBuffer.allocate(size);
    header(out, size);
    out.position(HEADER);
    out.putInt(TAGS);
    at = tag(out, "desc", at, name.length);
    at = tag(out, "cprt", at, rights.length);
    at = tag(out, "wtpt", at, white.length);
    at = tag(out, "rXYZ", at, white.length);
    at = tag(out, "gXYZ", at, white.length);
    at = tag(out, "bXYZ", at, white.length);
    tag(out, "rTRC", at, curve.length);
    tag(out, "gTRC", at, curve.length);
    tag(out, "bTRC", at, curve.length);
    out.put(name).put(rights).put(white);
    for (double[] primary : PRIMARIES) {
      out.put(xyz(primary));
    }
    out.put(curve);
    return out.array();
  }

  private static void header(ByteBuffer out, int size) {
    out.putInt(size).putInt(0).putInt(0x02400000);
    out.put(ascii("mntrRGB XYZ "));
    // 2026-01-01, no moment of anything
    out.putShort((short) 2026).putShort((short) 1).putShort((short) 1);
    out.putShort((short) 0).putShort((short) 0).putShort((short) 0);
    out.put(ascii("acsp"));
    out.position(68);
    for (double w : WHITE) {
      out.putInt(fixed(w));
    }
  }

  private static int tag(ByteBuffer out, String name, int at, int length) {
    out.put(ascii(name)).putInt(at).putInt(length);
    return at + length;
  }

  /** A textDescriptionType, padded to four bytes. */
  private static byte[] description() {
    int text = NAME.length() + 1;
    ByteBuffer out = ByteBuffer.allocate(padded(12 + text + 8 + 3 + 67));
    out.put(ascii("desc")).putInt(0).putInt(text).put(ascii(NAME));
    return out.array();
  }

  private static byte[] text() {
    ByteBuffer out = ByteBuffer.allocate(padded(8 + RIGHTS.length() + 1));
    out.put(ascii("text")).putInt(0).put(ascii(RIGHTS));
    return out.array();
  }

  private static byte[] xyz(double[] values) {
    ByteBuffer out = ByteBuffer.allocate(20);
    out.put(ascii("XYZ ")).putInt(0);
    for (double v : values) {
      out.putInt(fixed(v));
    }
    return out.array();
  }

  private static byte[] curve() {
    ByteBuffer out = ByteBuffer.allocate(12 + 2 * CURVE);
    out.put(ascii("curv")).putInt(0).putInt(CURVE);
    for (int i = 0; i < CURVE; i++) {
      double v = i / (CURVE - 1.0);
      double linear = v <= 0.04045 ? v / 12.92 : StrictMath.pow((v + 0.055) / 1.055, 2.4);
      out.putShort((short) Math.round(linear * 65535));
    }
    return out.array();
  }

  /** A number with 16 bits after the point. */
  private static int fixed(double value) {
    return (int) Math.round(value * 65536);
  }

  private static int padded(int length) {
    return (length + 3) / 4 * 4;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
