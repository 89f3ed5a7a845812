package witnessmark.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
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
        long count = findings.size() + report.unlisted();
        throw new CannotException(
            "It does not verify, so nothing was done. "
                + (count == 1 ? "The finding:\n  " : "The first of " + count + " findings:\n  ")
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

  /** The pair among those that signs this log, where there is one. */
  Optional<LogKey> key(List<LogKey> pairs) {
    return pairs.stream().filter(k -> k.opens(note, report.size(), report.root())).findFirst();
  }

  /** The id of the key that signs its newest checkpoint, eight hexadecimal digits. */
  String signer() {
    String line = note.stripTrailing();
    byte[] blob = Base64.getDecoder().decode(line.substring(line.lastIndexOf(' ') + 1));
    return HexFormat.of().formatHex(blob, 0, 4);
  }
}
