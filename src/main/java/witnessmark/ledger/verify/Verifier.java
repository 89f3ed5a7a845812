package witnessmark.ledger.verify;

import java.util.List;
import java.util.function.LongConsumer;

/**
 * Recomputes a ledger from its raw entries and names what does not agree: hashes, links, the signed
 * root, tiles, derived rows, and the signatures of persons under their decisions.
 *
 * <p>Reads every entry once, with two threads more; memory grows with the number of jobs and
 * persons only.
 */
public final class Verifier {
  /** At most so many findings are listed; the others are counted. */
  public static final int LISTED = 100;

  private Verifier() {}

  /**
   * Verifies without telling how far it has come.
   *
   * @see #verify(RawLedger, String, List, LongConsumer)
   */
  public static Report verify(RawLedger ledger, String verifierKey) {
    return verify(ledger, verifierKey, List.of(), n -> {});
  }

  /**
   * Verifies a ledger. What cannot be read is a finding, too.
   *
   * @param verifierKey the C2SP verifier key of the log, as in {@code ledger.pub}; one that signed
   *     earlier does, where vouchers lead from it to the one that signs now
   * @param kept earlier checkpoints of the log
   * @param progress hears now and then how many entries are done, and once at the end
   * @throws IllegalArgumentException when the verifier key is none
   */
  public static Report verify(
      RawLedger ledger, String verifierKey, List<Kept> kept, LongConsumer progress) {
    VerifierKey key = VerifierKey.parse(verifierKey);
    Findings findings = new Findings(LISTED);
    if (!SchemaCheck.tables(ledger, findings)) {
      // A view's rows may be other ones at every look: nothing that they say is worth checking.
      progress.accept(0);
      return findings.report(0, new byte[Hashes.LENGTH], List.of());
    }
    FileCheck file = FileCheck.begin(ledger);
    KeyChain keys = new KeyChain(key);
    SignedRoot signed = new SignedRoot(ledger, keys, findings);
    KeptRoots earlier = new KeptRoots(kept, key, findings);
    try (Walk walk =
        new Walk(ledger, signed, earlier, keys, file, key.name(), findings, progress)) {
      return walk.run();
    }
  }
}
