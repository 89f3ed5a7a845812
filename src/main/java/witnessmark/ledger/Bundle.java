package witnessmark.ledger;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.TreeSet;

/** A proof bundle: entries with the paths that prove them, under one checkpoint, in JSON. */
public final class Bundle {
  private Bundle() {}

  /**
   * The bundle of some entries, all as of one moment; each entry once, by number.
   *
   * @throws IllegalArgumentException when none is named or one is not in the log
   * @throws LedgerException when the log cannot be read or is not as it was signed
   */
  public static byte[] of(Reading reading, List<Long> entries) {
    if (entries.isEmpty()) {
      throw new IllegalArgumentException("No entry is named, so there is nothing to prove.");
    }
    return SignedTree.look(
        reading, tree -> ProofJson.write(json -> write(json, tree, new TreeSet<>(entries))));
  }

  private static void write(JsonGenerator json, SignedTree tree, TreeSet<Long> entries)
      throws IOException {
    json.writeStringField("checkpoint", tree.note());
    ProofJson.vouchers(json, tree.vouchers());
    ProofJson.entries(json, "entries", entries.stream().map(tree::included).toList());
  }
}
