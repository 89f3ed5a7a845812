package witnessmark.ledger.verify;

/** Compares table {@code trace} with the entries, row by row in step. */
final class TraceCheck implements AutoCloseable {
  private static final String TABLE = "trace";

  private final Findings findings;
  private final Table rows;
  private boolean more = true;
  private long current;

  TraceCheck(RawLedger ledger, Findings findings) {
    this.findings = findings;
    this.rows = new Table(TABLE, Findings.Subject.TRACE, findings, ledger::traces);
    advance();
  }

  /**
   * Checks the row of the entry to which the walk has come.
   *
   * @param entry its fields, or null when it has none that can be read
   */
  void entry(long n, EntryFields entry) {
    while (more && current < n) {
      extra();
    }
    if (more && current == n) {
      if (entry != null) {
        compare(n, entry);
      }
      advance();
    } else if (!rows.unreadable()) {
      add(n, "the row is missing; entry " + n + " has none");
    }
  }

  /** Names the rows after the last entry. */
  void finish() {
    while (more) {
      extra();
    }
  }

  private void compare(long n, EntryFields entry) {
    if (rows.value(1 + EntryFields.TRACE.length) instanceof byte[] row && entry.traceIs(row)) {
      return;
    }
    for (int i = 0; i < EntryFields.TRACE.length; i++) {
      Object stored = rows.value(i + 1);
      Object expected = entry.trace(i);
      if (!Cells.same(stored, expected) && !rows.unreadable()) {
        String column = EntryFields.TRACE[i];
        add(
            n,
            "column "
                + column
                + " holds "
                + Cells.show(stored)
                + ", entry "
                + n
                + " gives "
                + Cells.show(expected));
      }
    }
  }

  private void extra() {
    add(current, "the row is extra; there is no entry " + current);
    advance();
  }

  private void advance() {
    while (more = rows.next()) {
      Object n = rows.value(0);
      if (n instanceof Long number) {
        current = number;
        return;
      }
      if (!rows.unreadable()) {
        add(n instanceof String ? n : Cells.show(n), "column n holds no integer");
      }
    }
  }

  private void add(Object key, String sentence) {
    findings.add(Findings.Subject.TRACE, Place.row(TABLE, key), sentence);
  }

  @Override
  public void close() {
    rows.close();
  }
}
