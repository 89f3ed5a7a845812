package witnessmark.ledger;

import java.util.Arrays;
import java.util.Base64;
import java.util.List;

/** The proof that the log goes on from an earlier checkpoint of it, in JSON. */
public final class Growth {
  private Growth() {}

  /**
   * The proof from an earlier checkpoint to the newest.
   *
   * @param old the earlier checkpoint, a signed note whose signature was checked
   * @throws RewrittenException when the log does not go on from it
   * @throws LedgerException when the log cannot be read or is not as it was signed
   */
  public static byte[] since(Reading reading, String old) {
    TreeHead before = TreeHead.of(old);
    return SignedTree.look(
        reading,
        tree -> {
          check(before, tree);
          List<byte[]> path = tree.growth(before.size());
          return ProofJson.write(
              json -> {
                json.writeStringField("old", old);
                json.writeStringField("new", tree.note());
                ProofJson.vouchers(json, tree.vouchers());
                ProofJson.path(json, path);
              });
        });
  }

  private static void check(TreeHead before, SignedTree tree) {
    if (!before.origin().equals(tree.origin())) {
      throw new RewrittenException(
          "The earlier checkpoint is of the log "
              + before.origin()
              + ", this log is "
              + tree.origin()
              + ".");
    }
    if (before.size() == 0) {
      throw new RewrittenException(
          "The earlier checkpoint is of no entries: every log goes on from it, so it proves nothing.");
    }
    if (before.size() > tree.size()) {
      throw new RewrittenException(
          "History was rewritten: the earlier checkpoint signs "
              + before.size()
              + " entries, the log has "
              + tree.size()
              + ".");
    }
    byte[] now = tree.rootOf(before.size());
    if (!Arrays.equals(now, before.root())) {
      throw new RewrittenException(
          "History was rewritten: the earlier checkpoint signs the root "
              + Base64.getEncoder().encodeToString(before.root())
              + " over the first "
              + before.size()
              + " entries, these make "
              + Base64.getEncoder().encodeToString(now)
              + " now.");
    }
  }
}
