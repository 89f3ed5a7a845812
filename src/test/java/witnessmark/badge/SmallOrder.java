package witnessmark.badge;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/**
 * Encodings that are no public key for anybody alone, recomputed from the curve's equation (RFC
 * 8032, section 5.1) rather than copied: the eight points whose order divides 8, the other
 * encodings of these, and y for which there is no x.
 */
public final class SmallOrder {
  private static final BigInteger P = BigInteger.TWO.pow(255).subtract(BigInteger.valueOf(19));
  private static final BigInteger D =
      BigInteger.valueOf(-121665).multiply(BigInteger.valueOf(121666).modInverse(P)).mod(P);

  private SmallOrder() {}

  /** The five y of the points, with both signs: of the neutral one and its like one is no code. */
  public static List<byte[]> points() {
    List<BigInteger> ys = new ArrayList<>();
    ys.add(BigInteger.ONE);
    ys.add(P.subtract(BigInteger.ONE));
    ys.add(BigInteger.ZERO);
    // order 8: twice the point has y = 0, so y^2 = -x^2, so d y^4 + 2 y^2 - 1 = 0
    BigInteger root = root(D.add(BigInteger.ONE));
    for (BigInteger r : List.of(root, P.subtract(root))) {
      BigInteger yy = r.subtract(BigInteger.ONE).multiply(D.modInverse(P)).mod(P);
      BigInteger y = root(yy);
      if (y != null) {
        ys.add(y);
        ys.add(P.subtract(y));
      }
    }
    return encoded(ys);
  }

  /** y from p up to 2^255 - 1: numbers that RFC 8032 does not decode, some of them of points. */
  public static List<byte[]> beyond() {
    List<BigInteger> ys = new ArrayList<>();
    for (int i = 0; i < 19; i++) {
      ys.add(P.add(BigInteger.valueOf(i)));
    }
    return encoded(ys);
  }

  /** The first y that have no x. */
  public static List<byte[]> noPoints() {
    List<BigInteger> ys = new ArrayList<>();
    for (int i = 2; ys.size() < 5; i++) {
      BigInteger yy = BigInteger.valueOf((long) i * i);
      BigInteger v = D.multiply(yy).add(BigInteger.ONE).modInverse(P);
      if (root(yy.subtract(BigInteger.ONE).multiply(v).mod(P)) == null) {
        ys.add(BigInteger.valueOf(i));
      }
    }
    return encoded(ys);
  }

  /** All of them. */
  public static List<byte[]> all() {
    List<byte[]> all = new ArrayList<>(points());
    all.addAll(beyond());
    all.addAll(noPoints());
    return all;
  }

  public static String base64(byte[] key) {
    return Base64.getEncoder().encodeToString(key);
  }

  /** A square root modulo p, which is 5 modulo 8; null where there is none. */
  private static BigInteger root(BigInteger a) {
    BigInteger r = a.modPow(P.add(BigInteger.valueOf(3)).shiftRight(3), P);
    BigInteger i = BigInteger.TWO.modPow(P.subtract(BigInteger.ONE).shiftRight(2), P);
    for (BigInteger candidate : List.of(r, r.multiply(i).mod(P))) {
      if (candidate.multiply(candidate).mod(P).equals(a.mod(P))) {
        return candidate;
      }
    }
    return null;
  }

  private static List<byte[]> encoded(List<BigInteger> ys) {
    List<byte[]> all = new ArrayList<>();
    for (BigInteger y : ys) {
      for (int sign = 0; sign < 2; sign++) {
        byte[] bytes = new byte[32];
        BigInteger number = sign == 0 ? y : y.setBit(255);
        for (int i = 0; i < 32; i++) {
          bytes[i] = number.shiftRight(8 * i).byteValue();
        }
        all.add(bytes);
      }
    }
    return all;
  }
}
