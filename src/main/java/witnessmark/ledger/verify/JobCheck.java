package witnessmark.ledger.verify;

import java.util.LinkedHashMap;
import java.util.Map;

/** Follows the jobs through the entries and compares table {@code job} with the outcome. */
final class JobCheck {
  private static final String TABLE = "job";
  private static final String[] COLUMNS = {
    "job", "unit", "procedure", "revision", "station", "status", "opened", "ended"
  };

  private final Findings findings;
  private final Map<String, Object[]> jobs = new LinkedHashMap<>();

  JobCheck(Findings findings) {
    this.findings = findings;
  }

  void entry(long n, EntryFields entry) {
    String kind = entry.text(Field.KIND);
    if (!kind.startsWith("job-") || !entry.has(Field.JOB)) {
      return;
    }
    String job = entry.text(Field.JOB);
    if (kind.equals("job-opened")) {
      jobs.put(job, opened(n, job, entry));
      return;
    }
    Object[] row = jobs.get(job);
    if (row == null) {
      return;
    }
    switch (kind) {
      case "job-suspended" -> row[5] = "suspended";
      case "job-resumed" -> {
        row[5] = "open";
        row[4] = entry.text(Field.STATION);
      }
      case "job-closed" -> end(row, "closed", n);
      case "job-abandoned" -> end(row, "abandoned", n);
      default -> {
        // Entries of other kinds happen within a job and do not change its row.
      }
    }
  }

  private static Object[] opened(long n, String job, EntryFields entry) {
    return new Object[] {
      job,
      entry.text(Field.UNIT),
      entry.text(Field.PROCEDURE),
      entry.text(Field.REVISION),
      entry.text(Field.STATION),
      "open",
      n,
      null
    };
  }

  private static void end(Object[] row, String status, long n) {
    row[5] = status;
    row[7] = n;
  }

  /** Compares the table with the jobs after the last entry. */
  void finish(RawLedger ledger) {
    try (Table rows = new Table(TABLE, Findings.Subject.JOB, findings, ledger::jobs)) {
      while (rows.next()) {
        compare(rows);
      }
      if (!rows.unreadable()) {
        jobs.forEach(
            (job, row) -> add(job, "the row is missing; entry " + row[6] + " opened the job"));
      }
    }
  }

  private void compare(Table rows) {
    Object job = rows.value(0);
    // Removed, so that what is left at the end is what the table lacks.
    Object[] expected = job instanceof String ? jobs.remove(job) : null;
    if (rows.unreadable()) {
      return;
    }
    if (expected == null) {
      String key = job instanceof String text ? text : Cells.show(job);
      add(key, "the row is extra; no entry opened such a job, or it stands here twice");
      return;
    }
    for (int i = 1; i < COLUMNS.length; i++) {
      Object stored = rows.value(i);
      if (!Cells.same(stored, expected[i]) && !rows.unreadable()) {
        String holds = "column " + COLUMNS[i] + " holds " + Cells.show(stored);
        add(job, holds + ", the entries give " + Cells.show(expected[i]));
      }
    }
  }

  private void add(Object job, String sentence) {
    findings.add(Findings.Subject.JOB, Place.row(TABLE, job), sentence);
  }
}
