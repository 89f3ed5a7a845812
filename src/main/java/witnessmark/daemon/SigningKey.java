package witnessmark.daemon;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;

/** Which key signs the log, said when another takes over. For the writer's thread. */
final class SigningKey {
  private static final Logger LOG = LoggerFactory.getLogger(SigningKey.class);

  private final LedgerFiles files;
  private SqliteLedger ledger;
  private String verifier = "";

  SigningKey(LedgerFiles files) {
    this.files = files;
  }

  /**
   * Opens the log, to be looked at from then on.
   *
   * @throws witnessmark.ledger.LedgerException when it cannot be used
   */
  SqliteLedger open() {
    ledger = SqliteLedger.open(files);
    look();
    return ledger;
  }

  /** Looks whether the key is another than at the last look. */
  void look() {
    String now = ledger == null ? verifier : ledger.key().verifierLine();
    if (!verifier.isEmpty() && !now.equals(verifier)) {
      LOG.atInfo()
          .addKeyValue("verifier", now)
          .log("the log is signed by another key from here on");
    }
    verifier = now;
  }
}
