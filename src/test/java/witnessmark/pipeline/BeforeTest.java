package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Assign;
import witnessmark.entry.Entry;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.report.Explanation;

/** What an entry's event met, read back from a real log, and how it is explained. */
class BeforeTest {
  @TempDir private Path directory;

  /** The log on disk, read by {@code explain}'s way; the lines after the entry's own. */
  private List<String> why(List<Entry> log, long n) {
    LedgerFiles files = new LedgerFiles(directory.resolve("data-" + n));
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      Journal journal = new Journal(ledger);
      journal.note(new Entry.LogOpened(Bench.START, ledger.origin()));
      log.subList(1, log.size()).forEach(journal::note);
    }
    try (SqliteReading reading = SqliteReading.open(files)) {
      Entry entry = log.get((int) n);
      Before before = Before.of(reading, n, entry).orElseThrow();
      return Explanation.why(entry, before.job(), before.event(), before.today());
    }
  }

  @Test
  void aSecondHitIsExplainedByWhatSpeaksForAndAgainstEach() {
    Bench bench = Bench.on(Bench.group(3));
    bench.hit("TW-1", "50 N.m", "30", "");
    bench.hit("TW-1", "51 N.m", "1.8", "");
    long n = bench.size() - 1;
    bench.hit("TW-1", "50 N.m", "30", "");
    bench.person(new AbandonJob(bench.jobName(), Optional.empty(), "x"));
    assertThat(why(bench.log(), n))
        .containsExactly(
            "Before it",
            "  done        1 of 3 passes",
            "  due         Next: a/2, final pass, 50 N.m (45 to 55 N.m).",
            "What it could have been on",
            "  a/2, final pass, expected",
            "    for       it is next in its group",
            "    for       51 N.m is in its band of 45 to 55 N.m",
            "    against   it turned 1.8 degrees: a fresh one of its group hardly ever turns less"
                + " than 10.5, learnt from 1",
            "  a/1, final pass, tight",
            "    for       it was pulled by TW-1 in entry 6 and is held at 50 N.m",
            "    for       51 N.m is in its band of 45 to 55 N.m",
            "    for       it turned 1.8 degrees: a tight one turns 6.29 at most",
            "What decided",
            "  rule        Turned no further than a tight one, and less than a fresh one hardly ever"
                + " does: hit again.",
            "  otherwise   a named position; an angle as of a fresh one.");
  }

  @Test
  void anAnswerIsExplainedByWhatItMetWhenItWasGiven() {
    Bench bench = Bench.on(Bench.group(2, "angle-min = \"3\"", "angle-max = \"70\""));
    bench.hit("TW-1", "50 N.m", "30", "");
    Entry.TorqueTaken asks = bench.hit("TW-1", "50 N.m", "4", "");
    bench.person(
        new Assign(
            bench.size() - 1,
            asks,
            bench.jobName(),
            Optional.of("a/2"),
            "badge-07",
            "I was there"));
    assertThat(why(bench.log(), bench.size() - 1))
        .contains(
            "  a/2, final pass, named",
            "    for       it is named",
            "    for       it turned 4 degrees: its window is 3 to 70 deg",
            "  rule        A named position goes before all else.")
        .noneMatch(line -> line.startsWith("  today"));
  }

  @Test
  void whatAnotherVersionDecidedIsKeptAndSaid() {
    Bench bench = Bench.on(Bench.group(3));
    bench.hit("TW-1", "50 N.m", "30", "");
    Entry.TorqueTaken older = bench.hit("TW-1", "50 N.m", "30", "");
    Bench other = Bench.on(Bench.group(3));
    other.hit("TW-1", "50 N.m", "30", "");
    other.hit("TW-1", "50 N.m", "1.8", "");
    List<Entry> log = new ArrayList<>(other.log());
    Entry.TorqueTaken small = (Entry.TorqueTaken) log.get(log.size() - 1);
    Entry.TorqueTaken credited =
        new Entry.TorqueTaken(
            small.at(),
            small.station(),
            small.source(),
            small.event(),
            small.raw(),
            small.fingerprint(),
            small.timing(),
            small.scanned(),
            small.operator(),
            small.job(),
            older.judged());
    log.set(log.size() - 1, credited);
    assertThat(why(log, log.size() - 1))
        .contains(
            "  rule        The order of work leaves one fastener, and nothing speaks for another.",
            "  today       This version would decide hit-again-by-angle on a/1, rechecked. What the"
                + " entry says counts.");
  }
}
