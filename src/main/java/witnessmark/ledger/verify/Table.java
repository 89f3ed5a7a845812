package witnessmark.ledger.verify;

import java.io.IOException;

/** Walks the rows of a derived table; a table that cannot be read becomes one finding. */
final class Table implements AutoCloseable {
  /** Opens the rows. */
  interface Source {
    Rows open() throws IOException;
  }

  private final String name;
  private final Findings.Subject subject;
  private final Findings findings;
  private Rows rows;
  private boolean unreadable;

  Table(String name, Findings.Subject subject, Findings findings, Source source) {
    this.name = name;
    this.subject = subject;
    this.findings = findings;
    try {
      rows = source.open();
    } catch (IOException e) {
      unreadable(e);
    }
  }

  /** Goes to the next row; false after the last and when the rest cannot be read. */
  boolean next() {
    if (unreadable) {
      return false;
    }
    try {
      return rows.next();
    } catch (IOException e) {
      unreadable(e);
      return false;
    }
  }

  /** What a column holds; null, too, when it cannot be read, which is a finding. */
  Object value(int column) {
    if (unreadable) {
      return null;
    }
    try {
      return rows.value(column);
    } catch (IOException e) {
      unreadable(e);
      return null;
    }
  }

  boolean unreadable() {
    return unreadable;
  }

  private void unreadable(IOException e) {
    unreadable = true;
    findings.add(subject, Place.table(name), "cannot be read: " + e.getMessage());
  }

  @Override
  public void close() {
    if (rows != null) {
      rows.close();
    }
  }
}
