package witnessmark.tamper;

import java.util.ArrayList;
import java.util.List;
import witnessmark.tamper.Examiner.Outcome;

/** The page of a run. */
final class TamperPage {
  private static final List<String> HEAD =
      """
      # Tampering

      Made by `mvn -q -B test-compile exec:exec@tampering -Dtamper.edits=1000 -Dtamper.page=docs/tampering.md` (exit status 1 when an edit goes unrevealed;
      `-Dtamper.seed=N` for others). CI runs the short form, `TamperingTest`; `TamperIT` does some of it to the installed program with the sqlite3 shell.

      A log is made by the program: two jobs on 120 fasteners each, with mistakes, dispositions and a calibration. Each edit is done to a copy of its own, by
      somebody who has the files but not the key, unless said otherwise. Then it is asked, in this order:

      1. *revealed by verify*: `ledger verify` says so, with nothing but what lies in the directory;
      2. *revealed by what is kept outside*: `ledger verify --key FILE --since FILE` says so, with the verifier key and the newest checkpoint kept elsewhere;
      3. *without effect*: every row of every table, and every list that an index gives, is read as before (for one, a byte of a free page, or of what is no part
         of the record);
      4. otherwise it went *unrevealed*, and this page would be a fault.

      """
          .lines()
          .toList();

  private static final List<String> TAIL =
      """

      What this shows, and what not:

      - Whoever has no key is revealed by the directory alone. Two things are not tampering with it, but putting back what it once was: an older copy, and a
        write-ahead log (`ledger.db-wal`, there while the bridge runs or after it was killed) that is cut off, spoilt, or removed, which SQLite takes for a
        commit that never happened. Verify alone is content with both; a checkpoint kept elsewhere is not.
      - Whoever has stolen the key can sign any history, and verify alone must accept it. A checkpoint kept elsewhere *before* reveals it; what was appended after
        the newest kept one, nothing reveals. So keep checkpoints often, where the thief is not.
      - Another key in `ledger.pub` deceives whoever takes the key from the directory. `--key` with a copy kept elsewhere reveals it.
      - Views, triggers, tables, indexes and columns that no log has could show commands other rows than those verified, or other rows at another time; so could an
        index over part of its rows. Verify compares all that the file is made of with [what the format publishes](ledger-format.md), and the program opens no file with
        a view or a trigger of another's making.
      - `cursor` is how far readers have come: it is no part of the record, and no command shows anything else for it.
      """
          .lines()
          .toList();

  private TamperPage() {}

  static List<String> of(List<Count> counts, int edits, long seed) {
    List<String> lines = new ArrayList<>(HEAD);
    lines.add("Seed " + seed + ", Java " + System.getProperty("java.version") + ".");
    lines.add("");
    lines.add(
        "| edit | edits | revealed by verify | by what is kept outside | without effect | unrevealed |");
    lines.add("| --- | ---: | ---: | ---: | ---: | ---: |");
    counts.forEach(c -> lines.add(row(c.kind().name(), List.of(c))));
    lines.add(row("**all**", counts));
    lines.addAll(TAIL);
    return lines;
  }

  private static String row(String name, List<Count> counts) {
    StringBuilder row = new StringBuilder("| " + name + " | ");
    row.append(counts.stream().mapToInt(Count::edits).sum());
    for (Outcome outcome : Outcome.values()) {
      row.append(" | ").append(counts.stream().mapToInt(c -> c.of(outcome)).sum());
    }
    return row + " |";
  }
}
