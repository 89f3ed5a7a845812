package witnessmark.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.verify.Finding;
import witnessmark.ledger.verify.Kept;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Rows;
import witnessmark.ledger.verify.Verifier;

/**
 * A copy of the log that the independent verifier found whole.
 *
 * @param note its newest checkpoint
 * @param report what the verifier saw; nothing wrong
 */
record Checked(String note, Report report) {
  /**
   * Verifies a copy.
   *
   * @param otherwise what to do when it does not verify, a sentence
   * @throws CannotException when it does not verify
   */
  static Checked of(
      Path copy, String verifier, List<Kept> kept, LongConsumer progress, String otherwise)
      throws IOException {
    try (RawReader raw = RawReader.open(copy)) {
      Report report = Verifier.verify(raw, verifier, kept, progress);
      if (!report.verifies()) {
        List<Finding> findings = report.findings();
        throw new CannotException(
            "It does not verify, so nothing was done. The first of "
                + (findings.size() + report.unlisted())
                + " findings:\n  "
                + findings.get(0)
                + "\n"
                + otherwise,
            true);
      }
      return new Checked(note(raw), report);
    }
  }

  private static String note(RawReader raw) throws IOException {
    try (Rows rows = raw.checkpoints()) {
      if (rows.next() && rows.value(1) instanceof String note) {
        return note;
      }
      throw new IOException("the checkpoint that was just verified is gone");
    }
  }

  /** The key pair among those in a directory that signs this log, where there is one. */
  Optional<LogKey> key(LedgerFiles files) {
    try {
      return files.keys().stream()
          .filter(k -> k.opens(note, report.size(), report.root()))
          .findFirst();
    } catch (LedgerException e) {
      // None that can be read is none.
      return Optional.empty();
    }
  }
}
