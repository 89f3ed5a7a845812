package witnessmark.ledger;

import java.util.Base64;

/**
 * The proof of one entry as a C2SP tlog-proof file. Its {@code extra} line holds the entry's exact
 * bytes, which the form itself leaves out; they are proved like any entry by hashing them.
 *
 * @see <a href="https://c2sp.org/tlog-proof">c2sp.org/tlog-proof</a>
 */
public final class TlogProof {
  private TlogProof() {}

  /**
   * The file's text.
   *
   * @throws IllegalArgumentException when the log has no such entry
   * @throws LedgerException when the log cannot be read or is not as it was signed
   */
  public static String of(Reading reading, long n) {
    return SignedTree.look(
        reading,
        tree -> {
          SignedTree.Included included = tree.included(n);
          Base64.Encoder base64 = Base64.getEncoder();
          StringBuilder text = new StringBuilder("c2sp.org/tlog-proof@v1\n");
          text.append("extra ").append(base64.encodeToString(included.bytes())).append('\n');
          text.append("index ").append(n).append('\n');
          included.path().forEach(h -> text.append(base64.encodeToString(h)).append('\n'));
          return text.append('\n').append(tree.note()).toString();
        });
  }
}
