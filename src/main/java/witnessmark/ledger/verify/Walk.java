package witnessmark.ledger.verify;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.LongConsumer;

/** The one pass over the entries, which feeds everything that is checked against them. */
final class Walk implements AutoCloseable {
  private static final int STRIDE = 4096;

  private final RawLedger ledger;
  private final SignedRoot signed;
  private final KeptRoots kept;
  private final KeyChain keys;
  private final FileCheck file;
  private final Findings findings;
  private final LongConsumer progress;
  private final Hashes hashes = new Hashes();
  private final Chain chain = new Chain(hashes);
  private final TileCheck tiles;
  private final Tree tree;
  private final TraceCheck traces;
  private final JobCheck jobs;
  private final DecisionCheck decisions;
  private final EntryReader reader = new EntryReader();
  private final EntryFields fields = new EntryFields();
  private final byte[] unlinked = new byte[Hashes.LENGTH];
  private long next;
  private boolean gaps;

  Walk(
      RawLedger ledger,
      SignedRoot signed,
      KeptRoots kept,
      KeyChain keys,
      FileCheck file,
      String origin,
      Findings findings,
      LongConsumer progress) {
    this.ledger = ledger;
    this.signed = signed;
    this.kept = kept;
    this.keys = keys;
    this.file = file;
    this.findings = findings;
    this.progress = progress;
    this.tiles = new TileCheck(ledger, findings);
    this.tree = new Tree(hashes, tiles::subtree);
    this.traces = new TraceCheck(ledger, findings);
    this.jobs = new JobCheck(findings);
    this.decisions = new DecisionCheck(origin, findings);
  }

  Report run() {
    boolean whole = entries();
    if (whole) {
      signed.before(next, tree);
      kept.before(next, tree);
    }
    signed.open();
    chain.report(findings, signed.confirmed());
    if (whole) {
      signed.report(next, chain.agrees() && !gaps);
      kept.report(next, keys);
      tiles.finish();
      traces.finish();
      jobs.finish(ledger);
    }
    file.finish(findings);
    progress.accept(tree.size());
    return findings.report(tree.size(), tree.root(), keys.steps());
  }

  /** Reads the entries; false when the rest cannot be read. */
  private boolean entries() {
    try (Rows rows = new ReadAhead(new LeafRows(ledger.entries()), LeafRows.COLUMNS)) {
      while (rows.next()) {
        row(rows.value(0), rows.value(1), rows.value(2), rows.value(3));
        if (tree.size() % STRIDE == 0) {
          progress.accept(tree.size());
        }
      }
      return true;
    } catch (IOException e) {
      String after = next == 0 ? "no entry" : "no entry after " + (next - 1);
      findings.add(
          Findings.Subject.ENTRY,
          Place.table("table entry"),
          after + " could be read, so nothing that needs it was checked: " + e.getMessage());
      return false;
    }
  }

  private void row(Object n, Object bytes, Object link, Object leaf) {
    if (!(n instanceof Long number) || number < 0) {
      findings.add(
          Findings.Subject.ENTRY,
          Place.row("row", "with n " + Cells.show(n)),
          "expected a number from 0 up; the row was inserted");
      return;
    }
    if (number < next) {
      findings.add(Findings.Subject.ENTRY, Place.entry(number), "stands after entry " + (next - 1));
      return;
    }
    signed.before(number, tree);
    kept.before(number, tree);
    if (number > next && (signed.confirmed() == 0 || next < signed.confirmed())) {
      gaps = true;
      findings.add(
          Findings.Subject.ENTRY, Place.entries(next, number - 1), "missing: the row was removed");
    }
    entry(number, blob(number, "bytes", bytes), link, leaf);
    next = number + 1;
  }

  private void entry(long n, byte[] bytes, Object link, Object hashed) {
    byte[] leaf = hashed instanceof byte[] known ? known : unhashed(bytes);
    chain.add(n, leaf, link32(n, link));
    tree.add(leaf);
    String fault = reader.read(bytes, fields);
    if (fault == null) {
      jobs.entry(n, fields);
      String at = fields.text(Field.AT);
      if (!Members.moment(at)) {
        findings.add(
            Findings.Subject.ENTRY,
            Place.entry(n),
            "its /at is " + Cells.show(at) + ", expected an RFC 3339 time in UTC");
      }
      decisions.entry(n, fields.text(Field.KIND), bytes);
      if (Voucher.KIND.equals(fields.text(Field.KIND))) {
        voucher(n, bytes);
      }
    } else {
      findings.add(Findings.Subject.ENTRY, Place.entry(n), fault);
    }
    traces.entry(n, fault == null ? fields : null);
  }

  private byte[] unhashed(byte[] bytes) {
    byte[] leaf = new byte[Hashes.LENGTH];
    hashes.leaf(bytes, leaf);
    return leaf;
  }

  private void voucher(long n, byte[] bytes) {
    try {
      keys.add(n, bytes);
    } catch (NoteException e) {
      findings.add(
          Findings.Subject.ENTRY,
          Place.entry(n),
          "changes the log's key without its word: " + e.getMessage());
    }
  }

  private byte[] blob(long n, String column, Object value) {
    if (value instanceof byte[] bytes) {
      return bytes;
    }
    findings.add(
        Findings.Subject.ENTRY,
        Place.entry(n),
        "column " + column + " holds " + Cells.show(value) + ", expected a BLOB");
    return value instanceof String text ? text.getBytes(StandardCharsets.UTF_8) : new byte[0];
  }

  private byte[] link32(long n, Object value) {
    byte[] link = blob(n, "link", value);
    return link.length == Hashes.LENGTH ? link : unlinked;
  }

  @Override
  public void close() {
    traces.close();
    tiles.close();
  }
}
