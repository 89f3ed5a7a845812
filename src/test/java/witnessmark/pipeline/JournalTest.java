package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.decode.Malformed;
import witnessmark.decode.Sample;
import witnessmark.decode.Torqued;
import witnessmark.desk.Declined;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.job.Shop;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.ledger.verify.Verifier;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Direction;

/** Ledger and state kept in step, on a real file. */
class JournalTest {
  @TempDir private Path directory;

  private LedgerFiles files() {
    return new LedgerFiles(directory.resolve("data"));
  }

  private Journal begun(SqliteLedger ledger) {
    Journal journal = new Journal(ledger);
    journal.note(new Entry.LogOpened(Bench.START, ledger.origin()));
    journal.carryOut(new EnrolOperator("badge-07", "x", Optional.empty()), Bench.START);
    journal.carryOut(Bench.wrench("TW-1"), Bench.START);
    String text = Bench.group(500);
    journal.carryOut(
        new Release(ProcedureFile.parse("x", text), text, Optional.empty()), Bench.START);
    return journal;
  }

  private static Arrival hit(Bench numbers) {
    return new Arrival(
        Optional.of("bench-1"),
        "test",
        Bench.START,
        false,
        false,
        new Torqued(numbers.event("TW-1", "50 N.m", "", Direction.CW, ""), "raw"));
  }

  @Test
  void theStateReadByIndexIsThatOfTheWholeLog() throws Exception {
    Random random = new Random(5);
    Bench numbers = Bench.on(Bench.group(1));
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      Journal journal = begun(ledger);
      for (int i = 0; i < 12; i++) {
        long n =
            journal.carryOut(
                new OpenJob("P-1", Optional.empty(), "U-" + i, "bench-1", Optional.empty()),
                Bench.START);
        journal.take(List.of(List.of(hit(numbers), hit(numbers)), List.of(hit(numbers))));
        if (random.nextBoolean()) {
          journal.carryOut(
              new SuspendJob("J-" + n, Optional.empty(), Optional.empty()), Bench.START);
        } else {
          journal.carryOut(
              new witnessmark.desk.AbandonJob("J-" + n, Optional.empty(), "x"), Bench.START);
        }
        journal.take(List.of(List.of(hit(numbers)))); // without a job
      }
      Shop whole = Shop.EMPTY;
      try (SqliteReading reading = SqliteReading.open(files())) {
        for (var stored : reading.from(0, 10_000)) {
          whole = whole.after(stored.n(), EntryJson.read(stored.bytes()));
        }
        Shop live = Replay.of(reading.live());
        assertThat(live.size()).isEqualTo(whole.size()).isEqualTo(journal.shop().size());
        assertThat(live.operators()).isEqualTo(whole.operators());
        assertThat(live.wrenches()).isEqualTo(whole.wrenches());
        assertThat(live.jobs().keySet()).isEqualTo(whole.jobs().keySet()).hasSizeGreaterThan(2);
        for (String job : live.jobs().keySet()) {
          assertThat(live.jobs().get(job).conditions())
              .isEqualTo(whole.jobs().get(job).conditions());
        }
      }
    }
    try (RawReader raw = RawReader.open(files().database())) {
      assertThat(Verifier.verify(raw, Files.readString(files().verifier()).strip()).findings())
          .isEmpty();
    }
  }

  @Test
  void aDeclinedCommandLeavesLogAndStateAsTheyWere() {
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      Journal journal = begun(ledger);
      Shop before = journal.shop();
      assertThatThrownBy(
              () ->
                  journal.carryOut(
                      new SuspendJob("J-99", Optional.empty(), Optional.empty()), Bench.START))
          .isInstanceOf(Declined.class);
      assertThat(journal.shop()).isSameAs(before);
      assertThat(journal.current().size()).isEqualTo(before.size());
    }
  }

  @Test
  void twoJournalsOnOneLogDecideOnWhatBothAppended() {
    Bench numbers = Bench.on(Bench.group(1));
    try (SqliteLedger one = SqliteLedger.create(files());
        SqliteLedger two = SqliteLedger.open(files())) {
      Journal daemon = begun(one);
      Journal person = new Journal(two);
      person.carryOut(
          new OpenJob("P-1", Optional.empty(), "U-1", "bench-1", Optional.empty()), Bench.START);
      Outcome outcome = daemon.take(List.of(List.of(hit(numbers)))).get(0).get(0);
      Entry.TorqueTaken taken = (Entry.TorqueTaken) outcome.entries().get(0);
      assertThat(taken.judged().fastener()).contains("a/1");
      assertThat(person.current().jobs().get("J-4").passesDone()).isEqualTo(1);
    }
  }

  @Test
  void aRepeatWithinOneGroupIsSeenThoughNothingIsCommittedYet() {
    Bench numbers = Bench.on(Bench.group(1));
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      Journal journal = begun(ledger);
      Arrival arrival = hit(numbers);
      List<List<Outcome>> all = journal.take(List.of(List.of(arrival), List.of(arrival)));
      assertThat(all.get(0).get(0).repeat()).isFalse();
      assertThat(all.get(1).get(0).repeat()).isTrue();
    }
  }

  @Test
  void whatCannotBeReadIsOnRecordWithItsBytes() {
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      Journal journal = begun(ledger);
      Malformed malformed = new Malformed("not JSON", Sample.of(new byte[] {1, 2, 3}));
      journal.take(
          List.of(
              List.of(
                  new Arrival(Optional.empty(), "test", Bench.START, false, false, malformed))));
      try (SqliteReading reading = SqliteReading.open(files())) {
        Entry.Refused refused =
            (Entry.Refused) EntryJson.read(reading.entry(4).orElseThrow().bytes());
        assertThat(refused.head()).containsExactly(1, 2, 3);
        assertThat(refused.reason()).isEqualTo("not JSON");
      }
    }
  }
}
