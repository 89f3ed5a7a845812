package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;

/** A C2SP signed note with one Ed25519 signature: text, a blank line, a signature line. */
final class SignedNote {
  private static final String DASH = "\u2014 ";

  private SignedNote() {}

  /**
   * The note's text, its last line end included, when the key has signed it.
   *
   * @throws NoteException when the note has another form or the key has not signed it
   */
  static String open(String note, VerifierKey key) throws NoteException {
    int blank = note.lastIndexOf("\n\n");
    if (blank < 0) {
      throw new NoteException(
          "expected text, a blank line and a signature line, found no blank line");
    }
    String text = note.substring(0, blank + 1);
    String line = note.substring(blank + 2);
    if (!line.endsWith("\n") || line.indexOf('\n') != line.length() - 1) {
      throw new NoteException(
          "expected exactly one signature line, ended by a line end, after the blank line");
    }
    int space = line.lastIndexOf(' ');
    if (!line.startsWith(DASH) || space < DASH.length()) {
      throw new NoteException(
          "expected a signature line \"\u2014 NAME BASE64\", found another form");
    }
    String name = line.substring(DASH.length(), space);
    if (!name.equals(key.name())) {
      throw new NoteException("is signed by \"" + name + "\", expected \"" + key.name() + "\"");
    }
    byte[] signature = ExactBase64.decode(line.substring(space + 1, line.length() - 1));
    if (signature == null || signature.length < 4) {
      throw new NoteException("its signature line does not end in base64 of key id and signature");
    }
    check(text, signature, key);
    return text;
  }

  private static void check(String text, byte[] signature, VerifierKey key) throws NoteException {
    String id = HexFormat.of().formatHex(signature, 0, 4);
    if (!id.equals(key.id())) {
      throw new OtherKeyException(
          "is signed by the key with id " + id + ", expected the key with id " + key.id(), id);
    }
    int length = signature.length - 4;
    if (length != VerifierKey.SIGNATURE_LENGTH) {
      throw new NoteException("its signature has " + length + " bytes, expected exactly 64");
    }
    byte[] signed = text.getBytes(StandardCharsets.UTF_8);
    if (!key.signed(signed, Arrays.copyOfRange(signature, 4, signature.length))) {
      throw new NoteException(
          "its signature is not the one key " + key.id() + " makes over its text");
    }
  }
}
