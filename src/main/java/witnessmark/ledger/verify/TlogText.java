package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.List;

/**
 * A C2SP tlog-proof file taken apart.
 *
 * @param extra the bytes of its {@code extra} line, null when it has none
 * @param index the entry's number
 * @param path hashes, nearest the leaf first
 * @param note the checkpoint
 * @see <a href="https://c2sp.org/tlog-proof">c2sp.org/tlog-proof</a>
 */
record TlogText(byte[] extra, long index, List<byte[]> path, String note) {
  static final String FIRST = "c2sp.org/tlog-proof@v1";

  static TlogText read(String text) throws ProofFault {
    int blank = text.indexOf("\n\n");
    if (blank < 0) {
      throw new ProofFault("expected a blank line between the proof and its checkpoint");
    }
    String[] lines = text.substring(0, blank).split("\n", -1);
    if (!lines[0].equals(FIRST)) {
      throw new ProofFault(
          "expected the first line \"" + FIRST + "\", found " + Cells.show(lines[0]));
    }
    int at = 1;
    byte[] extra = null;
    if (at < lines.length && lines[at].startsWith("extra ")) {
      extra = decoded(lines[at].substring("extra ".length()), "the line extra");
      at++;
    }
    if (at == lines.length || !lines[at].startsWith("index ")) {
      throw new ProofFault("expected a line \"index\" with the entry's number");
    }
    long index = Decimal.read(lines[at].substring("index ".length()), "the line index");
    at++;
    if (lines.length - at > PathCheck.LONGEST) {
      throw new ProofFault(
          "expected at most " + PathCheck.LONGEST + " hashes, found " + (lines.length - at));
    }
    List<byte[]> path = new ArrayList<>();
    for (; at < lines.length; at++) {
      path.add(decoded(lines[at], "line " + (at + 1)));
    }
    return new TlogText(extra, index, path, text.substring(blank + 2));
  }

  private static byte[] decoded(String base64, String where) throws ProofFault {
    byte[] bytes = ExactBase64.decode(base64);
    if (bytes == null) {
      throw new ProofFault("expected base64 in " + where + ", found " + Cells.show(base64));
    }
    return bytes;
  }
}
