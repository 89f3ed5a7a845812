package witnessmark.badge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which 32 bytes are a person's public key. */
class PublicHalfTest {
  private static byte[] hex(String text) {
    return HexFormat.of().parseHex(text);
  }

  /** RFC 8032, section 7.1, tests 1 to 3: public key, message, signature. */
  @ParameterizedTest
  @CsvSource({
    "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a,'',"
        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e"
        + "39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c,72,"
        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f"
        + "3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025,af82,"
        + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67"
        + "f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
  })
  void thePublishedKeysAreKeysAndTheirSignaturesHold(String key, String text, String signature) {
    PublicHalf half = new PublicHalf(SmallOrder.base64(hex(key)));
    assertThat(half.signed(hex(text), hex(signature))).isTrue();
    byte[] beyond = hex(signature);
    // S + L, another text of the same number modulo the group's order (RFC 8032, section 5.1.7)
    byte[] order = hex("edd3f55c1a631258d69cf7a2def9de1400000000000000000000000000000010");
    for (int i = 0, carry = 0; i < 32; i++) {
      int sum = (beyond[32 + i] & 0xff) + (order[i] & 0xff) + carry;
      beyond[32 + i] = (byte) sum;
      carry = sum >> 8;
    }
    assertThat(half.signed(hex(text), beyond)).isFalse();
  }

  @Test
  void whatAnybodyCanSignForAndWhatIsNoPointIsNoKey() {
    assertThat(SmallOrder.points()).hasSize(10);
    for (byte[] key : SmallOrder.all()) {
      String base64 = SmallOrder.base64(key);
      assertThatThrownBy(() -> new PublicHalf(base64))
          .as(HexFormat.of().formatHex(key))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage(
              "\"" + base64 + "\" is no Ed25519 public key that only its holder can sign for");
    }
  }

  @Test
  void everyGeneratedKeyIsOneAndAboutHalfOfRandomBytesAre() {
    for (int i = 0; i < 20; i++) {
      String base64 = PrivateHalf.generate().publicHalf().base64();
      assertThat(Curve.holds(Base64.getDecoder().decode(base64))).as(base64).isTrue();
    }
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    int points = 0;
    for (int i = 0; i < 200; i++) {
      byte[] bytes = new byte[32];
      random.nextBytes(bytes);
      points += Curve.holds(bytes) ? 1 : 0;
    }
    // 200 fair coins: 60 to 140 but for one run in some ten millions
    assertThat(points).as("seed %d", seed).isBetween(60, 140);
  }

  @Test
  void theAllZeroKeyIsNone() {
    byte[] zero = new byte[32];
    byte[] ones = new byte[32];
    Arrays.fill(ones, (byte) 0xff);
    assertThat(Curve.holds(zero)).isFalse();
    assertThat(Curve.holds(ones)).isFalse();
  }
}
