package witnessmark.tamper;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.verify.Kept;
import witnessmark.ledger.verify.Verifier;

/**
 * Tells what reveals an edit.
 *
 * @param keptKey the verifier key, held outside
 * @param keptNote the newest checkpoint, held outside
 * @param rows what the log held
 */
record Examiner(String keptKey, String keptNote, String rows) {
  /** What reveals an edit, if anything has to. */
  enum Outcome {
    BY_VERIFY,
    BY_WHAT_IS_KEPT,
    WITHOUT_EFFECT,
    UNREVEALED
  }

  Outcome outcome(Copy copy) {
    if (!verifies(copy, new String(copy.read(copy.verifier()), StandardCharsets.UTF_8), false)) {
      return Outcome.BY_VERIFY;
    }
    if (!verifies(copy, keptKey, true)) {
      return Outcome.BY_WHAT_IS_KEPT;
    }
    return copy.rows().equals(rows) ? Outcome.WITHOUT_EFFECT : Outcome.UNREVEALED;
  }

  /** As the command does: with the directory's own key, or with the key and checkpoint kept. */
  private boolean verifies(Copy copy, String key, boolean since) {
    try (RawReader reader = RawReader.open(copy.database())) {
      List<Kept> kept = since ? List.of(new Kept("kept", keptNote)) : List.of();
      return Verifier.verify(reader, key, kept, n -> {}).verifies();
    } catch (IllegalArgumentException | IOException e) {
      return false;
    }
  }
}
