package witnessmark.badge;

import java.math.BigInteger;

/**
 * Whether 32 bytes are a public key for which only the holder of its private half can sign: a point
 * of the curve of Ed25519 as RFC 8032, section 5.1.3, decodes it, and none of the few points of
 * small order, for which anybody can make signatures.
 *
 * <p>Reckoned with y and the square of x, which are all that the curve's equation and the doubling
 * of a point need.
 */
final class Curve {
  private static final BigInteger ONE = BigInteger.ONE;
  private static final BigInteger TWO = BigInteger.TWO;

  /** The prime 2^255 - 19 (RFC 8032, section 5.1). */
  private static final BigInteger P = TWO.pow(255).subtract(BigInteger.valueOf(19));

  /** The curve's d, -121665/121666 (RFC 8032, section 5.1). */
  private static final BigInteger D =
      BigInteger.valueOf(-121665).multiply(BigInteger.valueOf(121666).modInverse(P)).mod(P);

  private Curve() {}

  /** Whether they are such a key. */
  static boolean holds(byte[] key) {
    BigInteger number = littleEndian(key);
    boolean sign = number.testBit(255);
    BigInteger y = number.clearBit(255);
    if (y.compareTo(P) >= 0) {
      return false;
    }
    // -x^2 + y^2 = 1 + d x^2 y^2
    BigInteger yy = y.multiply(y).mod(P);
    BigInteger xx = over(yy.subtract(ONE), D.multiply(yy).add(ONE));
    boolean square = xx.modPow(P.subtract(ONE).shiftRight(1), P).compareTo(ONE) <= 0;
    return square && !(xx.signum() == 0 && sign) && !smallOrder(xx, y);
  }

  /** Whether eight times the point is the neutral one, (0, 1). */
  private static boolean smallOrder(BigInteger xx, BigInteger y) {
    for (int i = 0; i < 3; i++) {
      // x(2P) = 2 x y / (y^2 - x^2), y(2P) = (y^2 + x^2) / (2 - y^2 + x^2)
      BigInteger yy = y.multiply(y).mod(P);
      BigInteger less = yy.subtract(xx);
      BigInteger doubled = over(yy.add(xx), TWO.subtract(less));
      xx = over(xx.multiply(yy).shiftLeft(2), less.multiply(less));
      y = doubled;
    }
    return xx.signum() == 0 && y.equals(ONE);
  }

  private static BigInteger over(BigInteger a, BigInteger b) {
    return a.multiply(b.modInverse(P)).mod(P);
  }

  private static BigInteger littleEndian(byte[] bytes) {
    byte[] turned = new byte[bytes.length];
    for (int i = 0; i < bytes.length; i++) {
      turned[i] = bytes[bytes.length - 1 - i];
    }
    return new BigInteger(1, turned);
  }
}
