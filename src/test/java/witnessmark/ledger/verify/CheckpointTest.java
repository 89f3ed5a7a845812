package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Base64;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CheckpointTest {
  private static final TestKey KEY = TestKey.first(TestKey.ORIGIN);
  private static final byte[] ROOT = HexFormat.of().parseHex(TreeVectors.ROOTS.get(8));
  private static final String ROOT64 = Base64.getEncoder().encodeToString(ROOT);

  // Source: c2sp.org/signed-note, C2SP/C2SP at 5ba5ee8, read there.
  private static final String SPEC_KEY =
      "example.com/foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k";
  private static final String SPEC_NOTE =
      "This is an example message.\n\n\u2014 example.com/foo"
          + " Uw2QOkn8srV1yJGh2VYRlL1Tnagv1YEq6TfXppzi2ONncAlTgK7Ztg1ERYNZXsYjOBH3mFXmRKuwHjG1Yu72IneyaQM=\n";

  // Signed by JDK 17 with the first key of RFC 8032 section 7.1 over the reference root of 8
  // leaves; verified by OpenSSL 3.0.22. Origin made up.
  private static final String GOLDEN_KEY =
      "example.com/torque-log+a26698b0+AddamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea";
  private static final String GOLDEN =
      "example.com/torque-log\n8\nXcnaeacGWamtVZy3Ad7ZoqudgjqtL0lgz+Nw7/RgQyg=\n\n"
          + "\u2014 example.com/torque-log"
          + " omaYsBN25AItYz5wSrcLFyX2IoHbHjBrcKa21AyBkd0KS9eT44yJduWlSkBCQquMCfl7lsAuqCBmCOTK3TMPv7E7xwI=\n";

  @Test
  void theNoteOfTheSpecificationOpens() throws NoteException {
    assertThat(SignedNote.open(SPEC_NOTE, VerifierKey.parse(SPEC_KEY)))
        .isEqualTo("This is an example message.\n");
  }

  @Test
  void theGoldenCheckpointOpens() throws NoteException {
    Checkpoint checkpoint = Checkpoint.open(GOLDEN, GOLDEN_KEY);
    assertThat(checkpoint.origin()).isEqualTo("example.com/torque-log");
    assertThat(checkpoint.size()).isEqualTo(8);
    assertThat(checkpoint.root()).isEqualTo(ROOT);
  }

  @Test
  void everyOtherCharacterAnywhereIsRefused() {
    for (int at = 0; at < GOLDEN.length(); at++) {
      for (char other : new char[] {'A', 'B', '9', '\n', ' ', '='}) {
        if (GOLDEN.charAt(at) != other) {
          String changed = GOLDEN.substring(0, at) + other + GOLDEN.substring(at + 1);
          assertThatThrownBy(() -> Checkpoint.open(changed, GOLDEN_KEY))
              .as("character %d as '%s'", at, other)
              .isInstanceOf(NoteException.class);
        }
      }
    }
  }

  @Test
  void everyCutIsRefused() {
    for (int length = 0; length < GOLDEN.length(); length++) {
      String cut = GOLDEN.substring(0, length);
      assertThatThrownBy(() -> Checkpoint.open(cut, GOLDEN_KEY))
          .as("the first %d characters", length)
          .isInstanceOf(NoteException.class);
    }
  }

  @Test
  void anotherOriginIsNamed() {
    refused(
        TestKey.first("example.com/other").checkpoint(8, ROOT),
        "its origin is \"example.com/other\", expected \"witnessmark.local/log/0123456789abcdef\"");
  }

  @Test
  void anotherSignerIsNamed() {
    String text = TestKey.ORIGIN + "\n8\n" + ROOT64 + "\n";
    refused(
        TestKey.first("example.com/other").note(text),
        "is signed by \"example.com/other\", expected \"witnessmark.local/log/0123456789abcdef\"");
  }

  @Test
  void anotherKeyIsNamedByItsId() {
    TestKey other = TestKey.second(TestKey.ORIGIN);
    refused(
        other.checkpoint(8, ROOT),
        "is signed by the key with id "
            + HexFormat.of().formatHex(other.id())
            + ", expected the key with id "
            + HexFormat.of().formatHex(KEY.id()));
  }

  @Test
  void aSignatureOverOtherTextIsRefused() {
    refused(
        KEY.checkpoint(8, ROOT).replace("\n8\n", "\n9\n"),
        "its signature is not the one key "
            + HexFormat.of().formatHex(KEY.id())
            + " makes over its text");
  }

  @Test
  void aValidSignatureWithOneByteMoreIsRefused() {
    String text = TestKey.ORIGIN + "\n8\n" + ROOT64 + "\n";
    refused(KEY.note(text, (byte) 0), "its signature has 65 bytes, expected exactly 64");
  }

  @Test
  void anotherSignatureLineIsRefused() {
    String note = KEY.checkpoint(8, ROOT);
    refused(
        note + note.substring(note.indexOf('\u2014')),
        "expected exactly one signature line, ended by a line end, after the blank line");
  }

  @Test
  void aNoteWithoutASignatureIsRefused() {
    refused(
        TestKey.ORIGIN + "\n8\n" + ROOT64 + "\n",
        "expected text, a blank line and a signature line, found no blank line");
  }

  @Test
  void extensionLinesAreRefused() {
    refused(
        KEY.note(TestKey.ORIGIN + "\n8\n" + ROOT64 + "\nmore\n"),
        "expected three lines of text (origin, size, root), found 4");
  }

  @ParameterizedTest
  @ValueSource(strings = {"08", "-1", "+8", "8 ", "", "0x8", "9223372036854775808"})
  void aSizeThatIsNoPlainDecimalIsRefused(String size) {
    refused(
        KEY.note(TestKey.ORIGIN + "\n" + size + "\n" + ROOT64 + "\n"),
        "expected the size in decimal without leading zeros, found \"" + size + "\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "YmFuYW5hcw==", "Xcnaeac"})
  void aRootThatIsNoHashIsRefused(String root) {
    refused(
        KEY.note(TestKey.ORIGIN + "\n8\n" + root + "\n"),
        "expected the root as base64 of 32 bytes, found \"" + root + "\"");
  }

  private static void refused(String note, String sentence) {
    assertThatThrownBy(() -> Checkpoint.open(note, KEY.verifierKey()))
        .isInstanceOf(NoteException.class)
        .hasMessage(sentence);
  }
}
