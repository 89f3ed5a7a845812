package witnessmark.badge;

import java.io.ByteArrayOutputStream;
import java.util.HexFormat;

/**
 * Writes PKCS #8 EncryptedPrivateKeyInfo (RFC 5958, section 3) in DER. The platform reads that form
 * under PBES2, and on Java 17 does not write it.
 */
final class Der {
  /** The object identifier of PBES2 (RFC 8018, appendix A.4): 1.2.840.113549.1.5.13. */
  private static final byte[] PBES2 = HexFormat.of().parseHex("06092a864886f70d01050d");

  private static final int SEQUENCE = 0x30;
  private static final int OCTETS = 0x04;
  private static final int SHORT = 0x80;

  private Der() {}

  /**
   * SEQUENCE { SEQUENCE { PBES2, parameters }, OCTET STRING }.
   *
   * @param parameters PBES2-params in DER
   */
  static byte[] encryptedPrivateKeyInfo(byte[] parameters, byte[] encrypted) {
    return tagged(
        SEQUENCE, tagged(SEQUENCE, PBES2, parameters), tagged(OCTETS, encrypted, new byte[0]));
  }

  private static byte[] tagged(int tag, byte[] first, byte[] second) {
    int length = first.length + second.length;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(tag);
    if (length < SHORT) {
      out.write(length);
    } else if (length < 1 << Byte.SIZE) {
      out.write(SHORT | 1);
      out.write(length);
    } else {
      throw new IllegalArgumentException("a sealed key has fewer than 256 bytes");
    }
    out.writeBytes(first);
    out.writeBytes(second);
    return out.toByteArray();
  }
}
