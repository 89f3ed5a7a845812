package witnessmark.badge;

import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One block of a PEM file (RFC 7468). */
final class Pem {
  private static final int LINE = 64;
  private static final Pattern BLOCK =
      Pattern.compile(
          "-----BEGIN ([A-Z0-9 ]{1,40})-----\\s([A-Za-z0-9+/=\\s]{0,20000})-----END \\1-----");

  private Pem() {}

  static String write(String label, byte[] bytes) {
    String body = Base64.getMimeEncoder(LINE, new byte[] {'\n'}).encodeToString(bytes);
    return "-----BEGIN " + label + "-----\n" + body + "\n-----END " + label + "-----\n";
  }

  /**
   * The bytes of the first block.
   *
   * @throws IllegalArgumentException when there is none of that label
   */
  static byte[] read(String label, String pem) {
    Matcher block = BLOCK.matcher(pem);
    if (!block.find()) {
      throw new IllegalArgumentException(
          "it is no PEM file with -----BEGIN " + label + "----- in it");
    }
    if (!block.group(1).equals(label)) {
      throw new IllegalArgumentException(
          "it holds " + block.group(1) + " where " + label + " is expected");
    }
    try {
      return Base64.getMimeDecoder().decode(block.group(2));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException("the base64 in it is damaged", e);
    }
  }
}
