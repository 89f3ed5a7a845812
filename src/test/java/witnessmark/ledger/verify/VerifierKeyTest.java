package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VerifierKeyTest {
  // Source: RFC 8032 section 7.1, tests 1 to 3, as they stand in Wycheproof at dac1dd4
  // (testvectors_v1/ed25519_test.json, tcId 80 to 82); the RFC's own text was not read.
  @ParameterizedTest
  @CsvSource({
    "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60,"
        + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a,'',"
        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb,"
        + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c,72,"
        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7,"
        + "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025,af82,"
        + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
  })
  void theSignaturesOfRfc8032Verify(String seed, String key, String message, String signature) {
    TestKey signer = new TestKey("example.com/log", seed, key);
    VerifierKey verifier = VerifierKey.parse(signer.verifierKey());
    byte[] text = HexFormat.of().parseHex(message);
    byte[] bytes = HexFormat.of().parseHex(signature);
    assertThat(signer.sign(text)).isEqualTo(bytes);
    assertThat(verifier.signed(text, bytes)).isTrue();
    for (int bit = 0; bit < bytes.length * 8; bit++) {
      byte[] flipped = bytes.clone();
      flipped[bit / 8] ^= (byte) (1 << bit % 8);
      assertThat(verifier.signed(text, flipped)).as("bit %d flipped", bit).isFalse();
    }
  }

  @Test
  void aSignatureOfAnyOtherLengthThanSixtyFourIsRefused() {
    // As Wycheproof at dac1dd4, ed25519_test.json tcId 37 (SignatureWithGarbage), which the
    // provider of JDK 17.0.15 accepts; measured.
    TestKey signer = TestKey.first("example.com/log");
    VerifierKey verifier = VerifierKey.parse(signer.verifierKey());
    byte[] text = {1, 2, 3};
    byte[] signature = signer.sign(text);
    for (int length = 0; length < 80; length++) {
      assertThat(verifier.signed(text, Arrays.copyOf(signature, length)))
          .as("cut or filled to %d bytes", length)
          .isEqualTo(length == 64);
    }
  }

  @Test
  void nameAndIdAreReadFromTheText() {
    // Source: c2sp.org/signed-note, C2SP/C2SP at 5ba5ee8; its base64 holds no +, the next does.
    VerifierKey spec =
        VerifierKey.parse(
            "example.com/foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k\n");
    assertThat(spec.name()).isEqualTo("example.com/foo");
    assertThat(spec.id()).isEqualTo("530d903a");
    VerifierKey plus =
        VerifierKey.parse(
            "example.com/torque-log+a26698b0+AddamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea");
    assertThat(plus.id()).isEqualTo("a26698b0");
  }

  @Test
  void aKeyIdThatIsNotTheKeysIsRefused() {
    String text = "example.com/foo+530d903b+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k";
    assertThatThrownBy(() -> VerifierKey.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "verifier key: expected NAME+KEYID+BASE64 as in ledger.pub, found \""
                + text
                + "\": its key id is 530d903b but its name and key give 530d903a; use the key as"
                + " it was published");
  }

  @ParameterizedTest
  @CsvSource({
    "''",
    "example.com/foo",
    "example.com/foo+530d903a",
    "+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k",
    "example.com foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k",
    "example.com/foo+530D903A+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k",
    "example.com/foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2",
    "example.com/foo+530d903a+AukyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k",
    "example.com/foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv",
  })
  void otherFormsAreRefused(String text) {
    assertThatThrownBy(() -> VerifierKey.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith(
            "verifier key: expected NAME+KEYID+BASE64 as in ledger.pub, found \"" + text + "\": ");
  }
}
