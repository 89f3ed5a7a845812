package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChecksumKindTest {
  /**
   * The CRCs' values are the check values of the catalogue of parametrised CRC algorithms, from
   * memory. By hand: the nine digits 0x31 to 0x39 joined by exclusive or leave 0x30 (nine times)
   * and 1^2^...^9 = 1; their sum is 9 * 0x35 = 0x1DD.
   */
  @ParameterizedTest
  @CsvSource({
    "XOR8, 0x31, xor8",
    "SUM8, 0xDD, sum8",
    "CRC16_MODBUS, 0x4B37, crc16-modbus",
    "CRC16_XMODEM, 0x31C3, crc16-xmodem",
    "CRC16_IBM_3740, 0x29B1, crc16-ibm-3740",
  })
  void theNineDigitsGiveTheCheckValue(ChecksumKind kind, String value, String code) {
    byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertThat(kind.of(digits)).isEqualTo(Integer.decode(value));
    assertThat(kind.code()).isEqualTo(code);
  }

  @Test
  void bytesAboveAsciiCountUnsigned() {
    byte[] bytes = {(byte) 0xFF, (byte) 0x80};
    assertThat(ChecksumKind.XOR8.of(bytes)).isEqualTo(0x7F);
    assertThat(ChecksumKind.SUM8.of(bytes)).isEqualTo(0x7F);
    for (ChecksumKind kind : ChecksumKind.values()) {
      assertThat(kind.of(bytes)).as(kind.code()).isBetween(0, 0xFFFF);
    }
  }
}
