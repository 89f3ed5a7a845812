package witnessmark.ledger.verify;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/**
 * Checks what the database file says about itself. Its structure is looked over by a thread of its
 * own, for that takes about as long as all the rest.
 */
final class FileCheck {
  private static final long APPLICATION_ID = 1465142593;
  private static final long USER_VERSION = 1;

  private final RawLedger ledger;
  private final FutureTask<List<String>> structure;

  private FileCheck(RawLedger ledger) {
    this.ledger = ledger;
    this.structure = new FutureTask<>(ledger::complaints);
  }

  static FileCheck begin(RawLedger ledger) {
    FileCheck check = new FileCheck(ledger);
    Thread thread = new Thread(check.structure, "structure");
    thread.setDaemon(true);
    thread.start();
    return check;
  }

  /** Waits for the end of the check and names what it found. */
  void finish(Findings findings) {
    try {
      expect("application_id", ledger.applicationId(), APPLICATION_ID, findings);
      expect("user_version", ledger.userVersion(), USER_VERSION, findings);
      for (String complaint : complaints()) {
        add(findings, "its structure is damaged: " + complaint);
      }
    } catch (IOException e) {
      add(findings, "cannot be read: " + e.getMessage());
    }
  }

  private List<String> complaints() throws IOException {
    try {
      return structure.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      throw new IllegalStateException("the structure could not be checked", e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("the check of its structure was interrupted", e);
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
