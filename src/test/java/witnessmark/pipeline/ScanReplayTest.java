package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.decode.Decoded;
import witnessmark.decode.Messages;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.Release;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.ledger.verify.Verifier;
import witnessmark.procedure.ProcedureFile;

/** What scans announced is the same after every restart, which reads a part of the log only. */
class ScanReplayTest {
  private static final String PROCEDURE =
      Bench.group(1).replace("title = \"Test\"\n", "title = \"Test\"\nunit-pattern = \"ATR-.*\"\n")
          + Bench.step("b", 1, "after = []");

  @TempDir private Path directory;
  private Instant now = Bench.START;
  private long number;

  @Test
  void theStateAfterEveryScanIsThatOfAFreshStart() throws Exception {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      Journal journal = new Journal(ledger);
      journal.note(new Entry.LogOpened(now, ledger.origin()));
      journal.carryOut(new EnrolOperator("badge-07", "bench 1", Optional.empty()), now);
      journal.carryOut(Bench.wrench("TW-1"), now);
      journal.carryOut(
          new Release(ProcedureFile.parse("p.toml", PROCEDURE), PROCEDURE, Optional.empty()), now);
      int chosen = 0;
      int answering = 0;
      for (String act :
          List.of(
              "P-1",
              "badge-07",
              "ATR-1",
              "@50",
              "wm:answer",
              "nothing known",
              "a/1",
              "wm:answer",
              "b/1",
              "P-1",
              "@50",
              "wm:answer",
              "@50",
              "wm:answer",
              "wm:set-aside",
              "wm:close",
              "ATR-2",
              "P-1",
              "ATR-2")) {
        now = now.plusSeconds(5);
        journal.take(List.of(List.of(arrival(act))));
        Shop fresh;
        try (SqliteReading reading = SqliteReading.open(files)) {
          fresh = Replay.of(reading.live());
        }
        assertThat(fresh.chosen()).as(act).isEqualTo(journal.shop().chosen());
        assertThat(fresh.size()).as(act).isEqualTo(journal.shop().size());
        assertThat(fresh.jobs().keySet()).as(act).isEqualTo(journal.shop().jobs().keySet());
        for (String job : fresh.jobs().keySet()) {
          assertThat(fresh.jobs().get(job).answering())
              .as(act)
              .isEqualTo(journal.shop().jobs().get(job).answering());
          assertThat(fresh.jobs().get(job).named())
              .as(act)
              .isEqualTo(journal.shop().jobs().get(job).named());
          answering += fresh.jobs().get(job).answering().isPresent() ? 1 : 0;
        }
        chosen += fresh.chosen().size();
      }
      assertThat(chosen).as("acts after which a procedure was chosen").isEqualTo(10);
      assertThat(answering).as("acts after which a question was to be answered").isEqualTo(3);
      assertThat(journal.shop().chosen()).isEmpty();
      assertThat(journal.shop().jobs()).as("the first is closed").hasSize(1);
    }
    try (RawReader raw = RawReader.open(files.database())) {
      assertThat(Verifier.verify(raw, Files.readString(files.verifier()).strip()).findings())
          .isEmpty();
    }
  }

  private Arrival arrival(String act) {
    Decoded decoded =
        act.startsWith("@")
            ? Messages.torque(
                    bytes(
                        "{\"wrench\":\"TW-1\",\"event\":"
                            + ++number
                            + ",\"torque\":\""
                            + act.substring(1)
                            + "\",\"unit\":\"N.m\"}"))
                .get(0)
            : Messages.scan(bytes("{\"scan\":\"" + act + "\"}")).get(0);
    return new Arrival(Optional.of(Bench.STATION), "test", now, false, false, decoded);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
  }
}
