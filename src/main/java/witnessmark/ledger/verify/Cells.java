package witnessmark.ledger.verify;

import java.util.Arrays;
import java.util.HexFormat;

/** Compares and shows what columns hold. */
final class Cells {
  private static final int SHOWN = 60;

  private Cells() {}

  /** Equal in type and value: the text 12 is not the integer 12. */
  static boolean same(Object one, Object other) {
    if (one instanceof byte[] bytes && other instanceof byte[] others) {
      return Arrays.equals(bytes, others);
    }
    return one == null ? other == null : one.equals(other);
  }

  static String show(Object value) {
    if (value == null) {
      return "NULL";
    }
    if (value instanceof byte[] bytes) {
      int shown = Math.min(bytes.length, Hashes.LENGTH);
      String hex = HexFormat.of().formatHex(bytes, 0, shown);
      return bytes.length + " bytes " + hex + (shown < bytes.length ? "…" : "");
    }
    if (value instanceof String text) {
      return '"' + printable(text) + '"';
    }
    return value.toString();
  }

  private static String printable(String text) {
    StringBuilder shown = new StringBuilder();
    for (int i = 0; i < Math.min(text.length(), SHOWN); i++) {
      char c = text.charAt(i);
      shown.append(Character.isISOControl(c) ? String.format("\\u%04x", (int) c) : c);
    }
    return text.length() > SHOWN ? shown.append('…').toString() : shown.toString();
  }
}
