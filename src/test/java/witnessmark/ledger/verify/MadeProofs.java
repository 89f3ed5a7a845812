package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.StringJoiner;

/** Proofs over a log of the tests, written after docs/proofs.md and by no code of ours. */
final class MadeProofs {
  static final TestKey KEY = TestKey.first(TestKey.ORIGIN);
  static final VerifierKey VERIFIER = VerifierKey.parse(KEY.verifierKey());
  static final List<byte[]> LEAVES = leaves(23);

  private MadeProofs() {}

  static List<byte[]> leaves(int size) {
    List<byte[]> leaves = new ArrayList<>();
    for (int n = 0; n < size; n++) {
      leaves.add(
          ("{\"v\":1,\"kind\":\"note\",\"text\":\"" + n + "\"}").getBytes(StandardCharsets.UTF_8));
    }
    return leaves;
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  static String note(int size) {
    return KEY.checkpoint(size, ExportRoot.mth(LEAVES.subList(0, size)));
  }

  static String text(String value) {
    return '"' + value.replace("\n", "\\n") + '"';
  }

  static String base64(byte[] bytes) {
    return Base64.getEncoder().encodeToString(bytes);
  }

  private static String array(List<byte[]> hashes) {
    StringJoiner joined = new StringJoiner(",", "[", "]");
    hashes.forEach(h -> joined.add('"' + base64(h) + '"'));
    return joined.toString();
  }

  static String item(int n, int size) {
    return "{\"entry\":"
        + n
        + ",\"leaf\":\""
        + base64(LEAVES.get(n))
        + "\",\"path\":"
        + array(NaiveTree.path(n, LEAVES.subList(0, size)))
        + "}";
  }

  static String bundle(int size, int... entries) {
    StringJoiner items = new StringJoiner(",", "[", "]");
    for (int n : entries) {
      items.add(item(n, size));
    }
    return "{\"v\":1,\"checkpoint\":" + text(note(size)) + ",\"entries\":" + items + "}";
  }

  static String growth(int old, int now) {
    return "{\"v\":1,\"old\":"
        + text(note(old))
        + ",\"new\":"
        + text(note(now))
        + ",\"path\":"
        + array(NaiveTree.proof(old, LEAVES.subList(0, now)))
        + "}";
  }

  static String tlogProof(int n, int size) {
    StringBuilder text = new StringBuilder("c2sp.org/tlog-proof@v1\nextra ");
    text.append(base64(LEAVES.get(n))).append("\nindex ").append(n).append('\n');
    NaiveTree.path(n, LEAVES.subList(0, size)).forEach(h -> text.append(base64(h)).append('\n'));
    return text.append('\n').append(note(size)).toString();
  }
}
