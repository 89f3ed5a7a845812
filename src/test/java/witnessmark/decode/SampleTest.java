package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class SampleTest {
  @Test
  void aShortRunOfBytesIsKeptWhole() {
    Sample sample = Sample.of("abc".getBytes(StandardCharsets.US_ASCII));
    assertThat(sample.head()).asString().isEqualTo("abc");
    assertThat(sample.length()).isEqualTo(3);
    // FIPS 180-4's example message "abc"; the digest from memory.
    assertThat(sample.sha256())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void aLongRunKeepsItsFirst4096BytesAndTheHashOfAll() {
    byte[] bytes = new byte[5000];
    bytes[4095] = 7;
    bytes[4999] = 9;
    Sample sample = Sample.of(bytes);
    assertThat(sample.head()).hasSize(4096).endsWith(7);
    assertThat(sample.length()).isEqualTo(5000);
    assertThat(sample.sha256()).isEqualTo(Sha.of(bytes));
  }

  @Test
  void neitherTheGivenNorTheReturnedArrayReachesInside() {
    byte[] bytes = {1, 2, 3};
    Sample sample = new Sample(bytes, 3, "0".repeat(64));
    bytes[0] = 9;
    sample.head()[1] = 9;
    assertThat(sample.head()).containsExactly(1, 2, 3);
  }

  @Test
  void samplesAreEqualWhenTheirContentIs() {
    assertThat(Sample.of(new byte[] {1})).isEqualTo(Sample.of(new byte[] {1}));
    assertThat(Sample.of(new byte[] {1})).hasSameHashCodeAs(Sample.of(new byte[] {1}));
    assertThat(Sample.of(new byte[] {1})).isNotEqualTo(Sample.of(new byte[] {2}));
  }

  @Test
  void aHeadThatDoesNotFitTheLengthIsRefused() {
    assertThatThrownBy(() -> new Sample(new byte[2], 3, "0".repeat(64)))
        .hasMessage("a sample of 3 bytes has a head of 2 bytes");
    assertThatThrownBy(() -> new Sample(new byte[0], 0, "A".repeat(64)))
        .hasMessage("a SHA-256 is 64 lower-case hexadecimal digits");
  }

  @Test
  void aReasonOfMoreThanOneLineIsRefused() {
    Sample sample = Sample.of(new byte[0]);
    assertThatThrownBy(() -> new Malformed("two\nlines", sample))
        .hasMessage("a reason must be one line of 1 to 500 printable characters");
    assertThatThrownBy(() -> new Broken("", sample))
        .hasMessage("a reason must be one line of 1 to 500 printable characters");
  }

  @Test
  void textShownInAReasonIsCutAndItsHiddenCharactersMasked() {
    assertThat(Reason.shown("a\u0000b\u202ec\ud800")).isEqualTo("\"a?b?c?\"");
    assertThat(Reason.shown("x".repeat(41))).isEqualTo("\"" + "x".repeat(40) + "\u2026\"");
    assertThat(Reason.shown("x".repeat(40))).isEqualTo("\"" + "x".repeat(40) + "\"");
  }
}
