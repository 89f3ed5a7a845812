package witnessmark.cli;

import java.util.List;
import java.util.SortedMap;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.SignedDecisions;

/**
 * Decisions that are not signed by whom they name. What is handed out is not made of them: it would
 * be a paper of this shop that says what no person of it decided.
 */
final class FalselySigned {
  private FalselySigned() {}

  /**
   * @param what is to be made
   * @throws Refusal when a decision among the entries is not signed as they themselves show it must
   */
  static void refuse(String what, String origin, SortedMap<Long, byte[]> entries) {
    refuse(
        what,
        origin,
        entries.entrySet().stream()
            .map(e -> new ProofResult.Entry(e.getKey(), e.getValue()))
            .toList());
  }

  /**
   * The same of proved entries.
   *
   * @throws Refusal when a decision among the entries is not signed as they themselves show it must
   */
  static void refuse(String what, String origin, List<ProofResult.Entry> entries) {
    List<String> wrong = SignedDecisions.of(origin, entries).wrong();
    if (!wrong.isEmpty()) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          "No "
              + what
              + " is written: a decision is not signed by the key of the person it names. "
              + wrong.get(0)
              + (wrong.size() > 1 ? " " + (wrong.size() - 1) + " more are like it." : "")
              + " Run: witnessmark ledger verify");
    }
  }
}
