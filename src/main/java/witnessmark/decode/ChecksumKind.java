package witnessmark.decode;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A checksum over bytes. The CRCs carry their names in the public catalogue of parametrised CRC
 * algorithms.
 */
public enum ChecksumKind {
  /** All bytes joined by exclusive or. */
  XOR8(2) {
    @Override
    public int of(byte[] bytes) {
      int sum = 0;
      for (byte b : bytes) {
        sum ^= b & 0xFF;
      }
      return sum;
    }
  },
  /** The sum of all bytes, modulo 256. */
  SUM8(2) {
    @Override
    public int of(byte[] bytes) {
      int sum = 0;
      for (byte b : bytes) {
        sum = sum + (b & 0xFF) & 0xFF;
      }
      return sum;
    }
  },
  /** Polynomial 0x8005, initial value 0xFFFF, reflected in and out, no final exclusive or. */
  CRC16_MODBUS(4) {
    @Override
    public int of(byte[] bytes) {
      int crc = 0xFFFF;
      for (byte b : bytes) {
        crc ^= b & 0xFF;
        for (int bit = 0; bit < 8; bit++) {
          // 0xA001 is 0x8005 with its bits in reverse order.
          crc = (crc & 1) == 0 ? crc >>> 1 : crc >>> 1 ^ 0xA001;
        }
      }
      return crc;
    }
  },
  /** Polynomial 0x1021, initial value 0, not reflected, no final exclusive or. */
  CRC16_XMODEM(4) {
    @Override
    public int of(byte[] bytes) {
      return crc1021(0, bytes);
    }
  },
  /** Polynomial 0x1021, initial value 0xFFFF, not reflected, no final exclusive or. */
  CRC16_IBM_3740(4) {
    @Override
    public int of(byte[] bytes) {
      return crc1021(0xFFFF, bytes);
    }
  };

  private final int digits;

  ChecksumKind(int digits) {
    this.digits = digits;
  }

  /** The checksum of these bytes, not negative. */
  public abstract int of(byte[] bytes);

  /** How many hexadecimal digits the largest one has. */
  public int digits() {
    return digits;
  }

  /** The name in profiles, e.g. {@code crc16-modbus}. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** All names. */
  public static List<String> codes() {
    return Arrays.stream(values()).map(ChecksumKind::code).toList();
  }

  private static int crc1021(int initial, byte[] bytes) {
    int crc = initial;
    for (byte b : bytes) {
      crc ^= (b & 0xFF) << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) == 0 ? crc << 1 & 0xFFFF : (crc << 1 ^ 0x1021) & 0xFFFF;
      }
    }
    return crc;
  }
}
