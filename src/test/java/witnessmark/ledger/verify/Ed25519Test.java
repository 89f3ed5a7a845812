package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.MessageDigest;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.badge.PublicHalf;
import witnessmark.badge.SmallOrder;

/** Keys and signatures as the verifier takes them. */
class Ed25519Test {
  /** RFC 8032, section 7.1, test 2. */
  private static final byte[] KEY =
      HexFormat.of().parseHex("3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");

  private static final byte[] SIGNATURE =
      HexFormat.of()
          .parseHex(
              "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
                  + "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");

  /** The group's order L, little-endian (RFC 8032, section 5.1). */
  private static final byte[] ORDER =
      HexFormat.of().parseHex("edd3f55c1a631258d69cf7a2def9de1400000000000000000000000000000010");

  private static final byte[] TEXT = {0x72};

  @Test
  void thePublishedSignatureHolds() {
    assertThat(Ed25519.of(KEY).signed(TEXT, SIGNATURE)).isTrue();
    assertThat(Ed25519.of(KEY).signed(new byte[] {0x73}, SIGNATURE)).isFalse();
  }

  @Test
  void theSameNumberBeyondTheGroupsOrderIsNoSignature() {
    byte[] beyond = SIGNATURE.clone();
    for (int i = 0, carry = 0; i < 32; i++) {
      int sum = (beyond[32 + i] & 0xff) + (ORDER[i] & 0xff) + carry;
      beyond[32 + i] = (byte) sum;
      carry = sum >> 8;
    }
    assertThat(Ed25519.of(KEY).signed(TEXT, beyond)).isFalse();
  }

  @Test
  void whatAnybodyCanSignForAndWhatIsNoPointIsNoKey() {
    for (byte[] key : SmallOrder.all()) {
      assertThat(Ed25519.of(key)).as(HexFormat.of().formatHex(key)).isNull();
    }
    for (byte[] key : SmallOrder.points()) {
      EdPoint point = EdPoint.decode(key);
      assertThat(point == null || point.ofSmallOrder()).isTrue();
    }
  }

  @Test
  void aLogsKeyOfSmallOrderIsRefused() throws Exception {
    byte[] typed = new byte[33];
    typed[0] = 1;
    MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
    sha256.update("log\n".getBytes());
    String id = HexFormat.of().formatHex(sha256.digest(typed), 0, 4);
    String line = "log+" + id + "+" + Base64.getEncoder().encodeToString(typed);
    assertThatThrownBy(() -> VerifierKey.parse(line))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(
            "its key is no Ed25519 public key that only its holder can sign for; use the key as it"
                + " was published");
  }

  /** Written apart, writer and verifier must take the same keys. */
  @Test
  void writerAndVerifierTakeTheSameKeys() {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      byte[] bytes = new byte[32];
      random.nextBytes(bytes);
      boolean writer;
      try {
        new PublicHalf(SmallOrder.base64(bytes));
        writer = true;
      } catch (IllegalArgumentException e) {
        writer = false;
      }
      assertThat(Ed25519.of(bytes) != null)
          .as("%s, seed %d", HexFormat.of().formatHex(bytes), seed)
          .isEqualTo(writer);
    }
  }
}
