package witnessmark.ledger.verify;

import java.math.BigInteger;

/**
 * A point of edwards25519.
 *
 * @param x below p
 * @param y below p
 */
record EdPoint(BigInteger x, BigInteger y) {
  private static final BigInteger P =
      BigInteger.ONE.shiftLeft(255).subtract(BigInteger.valueOf(19));
  private static final BigInteger D =
      BigInteger.valueOf(121665).negate().multiply(BigInteger.valueOf(121666).modInverse(P)).mod(P);

  /** A square root of -1. */
  private static final BigInteger I =
      BigInteger.TWO.modPow(P.subtract(BigInteger.ONE).shiftRight(2), P);

  private static final EdPoint NEUTRAL = new EdPoint(BigInteger.ZERO, BigInteger.ONE);

  /**
   * Decodes 32 bytes, step by step after RFC 8032, section 5.1.3.
   *
   * @return null when they encode no point
   */
  static EdPoint decode(byte[] bytes) {
    byte[] big = new byte[bytes.length];
    for (int i = 0; i < big.length; i++) {
      big[big.length - 1 - i] = bytes[i];
    }
    // step 1
    boolean odd = big[0] < 0;
    big[0] &= 0x7f;
    BigInteger y = new BigInteger(1, big);
    if (y.compareTo(P) >= 0) {
      return null;
    }
    // steps 2 and 3
    BigInteger u = y.multiply(y).subtract(BigInteger.ONE).mod(P);
    BigInteger v = D.multiply(y).multiply(y).add(BigInteger.ONE).mod(P);
    BigInteger v3 = v.modPow(BigInteger.valueOf(3), P);
    BigInteger uv7 = u.multiply(v3).multiply(v3).multiply(v).mod(P);
    BigInteger power = uv7.modPow(P.subtract(BigInteger.valueOf(5)).shiftRight(3), P);
    BigInteger x = u.multiply(v3).multiply(power).mod(P);
    BigInteger vxx = v.multiply(x).multiply(x).mod(P);
    if (!vxx.equals(u)) {
      if (!vxx.equals(P.subtract(u))) {
        return null;
      }
      x = x.multiply(I).mod(P);
    }
    // step 4
    if (x.signum() == 0 && odd) {
      return null;
    }
    return new EdPoint(x.testBit(0) == odd ? x : P.subtract(x), y);
  }

  /** Whether eight times the point is the neutral element: anybody can sign for such a key. */
  boolean ofSmallOrder() {
    return twice().twice().twice().equals(NEUTRAL);
  }

  /** The sum with itself, by the addition law of RFC 8032, section 5.1. */
  private EdPoint twice() {
    BigInteger xy = x.multiply(y).mod(P);
    BigInteger dxxyy = D.multiply(xy).multiply(xy).mod(P);
    BigInteger sum = x.multiply(x).add(y.multiply(y));
    return new EdPoint(
        xy.shiftLeft(1).multiply(BigInteger.ONE.add(dxxyy).modInverse(P)).mod(P),
        sum.multiply(BigInteger.ONE.subtract(dxxyy).modInverse(P)).mod(P));
  }
}
