package witnessmark.ledger.verify;

import java.util.Optional;
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
   * @see #verify(RawLedger, String, Optional, LongConsumer)
   */
  public static Report verify(RawLedger ledger, String verifierKey) {
    return verify(ledger, verifierKey, Optional.empty(), n -> {});
  }

  /**
   * Verifies a ledger. What cannot be read is a finding, too.
   *
   * @param verifierKey the C2SP verifier key of the log, as in {@code ledger.pub}
   * @param kept an earlier checkpoint of the log; that it is signed is already known
   * @param progress hears now and then how many entries are done, and once at the end
   * @throws IllegalArgumentException when the verifier key is none
   */
  public static Report verify(
      RawLedger ledger, String verifierKey, Optional<Checkpoint> kept, LongConsumer progress) {
    VerifierKey key = VerifierKey.parse(verifierKey);
    Findings findings = new Findings(LISTED);
    FileCheck file = FileCheck.begin(ledger);
    SignedRoot signed = new SignedRoot(ledger, key, findings);
    KeptRoot earlier = new KeptRoot(kept.orElse(null), findings);
    try (Walk walk = new Walk(ledger, signed, earlier, file, key.name(), findings, progress)) {
      return walk.run();
    }
  }
}
