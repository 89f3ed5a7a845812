package witnessmark.cli;

import witnessmark.entry.Moments;
import witnessmark.ledger.Reading;
import witnessmark.report.Provenance;

/** What a page is made from. */
final class Source {
  private Source() {}

  /** The log as it is now, which has an entry. */
  static Provenance of(Reading reading) {
    return Provenance.of(Version.program(), Moments.now(), reading.checkpoint().orElseThrow());
  }
}
