package witnessmark.ledger.verify;

import java.io.IOException;

/** Checks what the database file says about itself. */
final class FileCheck {
  private static final long APPLICATION_ID = 1465142593;
  private static final long USER_VERSION = 1;

  private FileCheck() {}

  static void run(RawLedger ledger, Findings findings) {
    try {
      expect("application_id", ledger.applicationId(), APPLICATION_ID, findings);
      expect("user_version", ledger.userVersion(), USER_VERSION, findings);
      for (String complaint : ledger.complaints()) {
        add(findings, "its structure is damaged: " + complaint);
      }
    } catch (IOException e) {
      add(findings, "cannot be read: " + e.getMessage());
    }
  }

  private static void expect(String pragma, long found, long expected, Findings findings) {
    if (found != expected) {
      add(findings, "its " + pragma + " is " + found + ", expected " + expected);
    }
  }

  private static void add(Findings findings, String sentence) {
    findings.add(Findings.Subject.FILE, Place.table("file"), sentence);
  }
}
