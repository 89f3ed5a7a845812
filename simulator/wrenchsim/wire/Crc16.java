package wrenchsim.wire;

/**
 * CRC-16/MODBUS: polynomial 0x8005 reflected in and out (so 0xA001 here), initial value 0xFFFF, no
 * final XOR.
 */
final class Crc16 {
  private Crc16() {}

  static int of(byte[] bytes) {
    int crc = 0xFFFF;
    for (byte b : bytes) {
      crc ^= b & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >>> 1 : (crc >>> 1) ^ 0xA001;
      }
    }
    return crc;
  }
}
