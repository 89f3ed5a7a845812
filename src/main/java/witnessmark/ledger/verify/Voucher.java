package witnessmark.ledger.verify;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;

/**
 * An entry by which one key of the log vouches for the next.
 *
 * @param n the entry's number; checkpoints of at most so many entries are signed by {@code from},
 *     those of more by {@code to}
 */
record Voucher(long n, VerifierKey from, VerifierKey to) {
  /** The kind of these entries. */
  static final String KIND = "log-key-changed";

  private static final String FIRST_LINE = "witnessmark.local/log-key-voucher@v1";
  private static final JsonFactory JSON =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .disable(JsonFactory.Feature.CHARSET_DETECTION)
          .build();

  /**
   * Reads an entry of that kind and checks its note.
   *
   * @param n the entry's number
   * @throws NoteException when the entry has another form, or its note is not what the old key
   *     signs for the new one at this place
   */
  static Voucher read(long n, byte[] entry) throws NoteException {
    Map<String, String> texts = texts(entry);
    if (!KIND.equals(texts.get("kind"))) {
      throw new NoteException("expected an entry of kind " + KIND);
    }
    VerifierKey from = key(texts, "from");
    VerifierKey to = key(texts, "to");
    String[] lines = SignedNote.open(text(texts, "voucher"), from).split("\n", -1);
    if (lines.length != 5) {
      throw new NoteException(
          "expected four lines in its voucher (what it is, origin, new key, number), found "
              + (lines.length - 1));
    }
    line("what it is", lines[0], FIRST_LINE);
    line("the origin", lines[1], from.name());
    line("the new key", lines[2], to.line());
    line("the number of its entry", lines[3], Long.toString(n));
    if (!to.name().equals(from.name())) {
      throw new NoteException("vouches for the key of another log, \"" + to.name() + "\"");
    }
    return new Voucher(n, from, to);
  }

  private static void line(String what, String found, String expected) throws NoteException {
    if (!found.equals(expected)) {
      throw new NoteException(
          "its voucher says "
              + Cells.show(found)
              + " for "
              + what
              + ", expected \""
              + expected
              + '"');
    }
  }

  private static VerifierKey key(Map<String, String> texts, String name) throws NoteException {
    String line = text(texts, name);
    try {
      VerifierKey key = VerifierKey.parse(line);
      if (key.line().equals(line)) {
        return key;
      }
    } catch (IllegalArgumentException e) {
      // Falls to the sentence below, which needs no key of a stranger in full.
    }
    throw new NoteException("expected a verifier key in /" + name + ", found " + Cells.show(line));
  }

  private static String text(Map<String, String> texts, String name) throws NoteException {
    String text = texts.get(name);
    if (text == null) {
      throw new NoteException("expected a text in /" + name);
    }
    return text;
  }

  /** The texts of the object itself. */
  private static Map<String, String> texts(byte[] entry) throws NoteException {
    Map<String, String> texts = new TreeMap<>();
    try (JsonParser parser = JSON.createParser(entry)) {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        throw new NoteException("expected one JSON object");
      }
      String name;
      while ((name = parser.nextFieldName()) != null) {
        if (parser.nextToken() == JsonToken.VALUE_STRING) {
          texts.put(name, parser.getText());
        } else {
          parser.skipChildren();
        }
      }
      if (parser.nextToken() != null) {
        throw new NoteException("expected one JSON object, found more after it");
      }
    } catch (IOException e) {
      throw new NoteException("expected one JSON object in UTF-8");
    }
    return texts;
  }
}
