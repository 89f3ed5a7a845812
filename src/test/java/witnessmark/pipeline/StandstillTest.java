package witnessmark.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.decode.Messages;
import witnessmark.decode.Sample;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;

/** While nothing can be recorded, what comes is kept or counted, and nobody is told otherwise. */
class StandstillTest {
  private static final Duration LONG = Duration.ofSeconds(30);
  private static final int ROOM = 16;

  private final FailingLedger.Switch how = new FailingLedger.Switch();
  private final AtomicBoolean doubt = new AtomicBoolean();
  private final AtomicBoolean fatal = new AtomicBoolean();
  private final List<String> heard = Collections.synchronizedList(new ArrayList<>());

  @TempDir private Path directory;
  private LedgerFiles files;
  private Loop loop;

  @BeforeEach
  void begin() {
    files = new LedgerFiles(directory.resolve("data"));
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      new Journal(ledger).note(new Entry.LogOpened(Bench.START, ledger.origin()));
    }
    loop =
        new Loop(
            ROOM, () -> new FailingLedger(SqliteLedger.open(files), how), this::doubt, () -> {});
    loop.start();
  }

  @AfterEach
  void end() {
    loop.close();
  }

  private boolean doubt() {
    if (fatal.get()) {
      throw new StackOverflowError();
    }
    return doubt.get();
  }

  private final class Told implements Sender {
    private final String name;
    private final boolean keeps;

    Told(String name, boolean keeps) {
      this.name = name;
      this.keeps = keeps;
    }

    @Override
    public boolean keeps() {
      return keeps;
    }

    @Override
    public void recorded(List<Outcome> outcomes) {
      heard.add(name + " recorded");
    }

    @Override
    public void waits() {
      heard.add(name + " waits");
    }

    @Override
    public void lost() {
      heard.add(name + " lost");
    }
  }

  private boolean offer(int number, boolean keeps, long length) {
    byte[] json =
        "{\"wrench\":\"TW-1\",\"torque\":\"%d\",\"unit\":\"N.m\"}"
            .formatted(number)
            .getBytes(UTF_8);
    return loop.offer(
        new Message(
            Optional.of("bench-1"),
            keeps ? "mqtt:shop" : "serial:cable",
            Bench.START.plusSeconds(number),
            false,
            length,
            () -> Messages.torque(json),
            () -> Sample.of(json),
            new Told(Integer.toString(number), keeps)),
        Duration.ZERO);
  }

  private void full() {
    how.fault.set(FailingLedger.Fault.NOT_STORED);
    doubt.set(true);
    await().atMost(LONG).until(() -> loop.counts().trouble() != null);
  }

  private void room() {
    how.fault.set(FailingLedger.Fault.NONE);
    doubt.set(false);
    await().atMost(LONG).until(() -> loop.counts().trouble() == null);
    await().atMost(LONG).until(() -> loop.counts().waiting() == 0);
  }

  @Test
  void aWriterThatHasEndedIsToldOfAndTakesNoCredit() {
    fatal.set(true);
    await().atMost(LONG).until(() -> loop.counts().trouble() != null);
    assertThat(loop.counts().trouble())
        .isEqualTo(
            "The program's writer has ended by java.lang.StackOverflowError. Start the bridge"
                + " again; it goes on where the log ends.");
    assertThat(offer(1, true, 20)).isTrue();
    assertThat(heard).doesNotContain("1 recorded");
    await().atMost(LONG).until(() -> heard.contains("1 waits"));
  }

  private List<Entry> entries() {
    try (SqliteReading reading = SqliteReading.open(files)) {
      return reading.from(1, 1000).stream().map(s -> EntryJson.read(s.bytes())).toList();
    }
  }

  private static List<String> torques(List<Entry> entries) {
    return entries.stream()
        .filter(Entry.TorqueTaken.class::isInstance)
        .map(e -> ((Entry.TorqueTaken) e).event().torque().digits().text())
        .toList();
  }

  @Test
  void aFullDiskIsFoundBeforeAnythingComesAndIsOverByItself() {
    full();
    assertThat(loop.counts().trouble()).isEqualTo("the disk is full");
    room();
    assertThat(entries()).isEmpty();
  }

  @Test
  void whatNobodyElseHasIsKeptInOrderAndTheRestIsCountedAndStated() {
    full();
    IntStream.rangeClosed(1, ROOM + 5).forEach(n -> assertThat(offer(n, false, 40)).isTrue());
    assertThat(loop.counts().notKept()).isEqualTo(5);
    assertThat(loop.counts().waiting()).isEqualTo(ROOM);
    assertThat(heard)
        .contains("1 waits", "16 waits", "17 lost", "21 lost")
        .doesNotContain("1 lost");
    assertThat(heard).noneMatch(h -> h.endsWith("recorded"));
    room();
    List<Entry> entries = entries();
    assertThat(torques(entries))
        .isEqualTo(IntStream.rangeClosed(1, ROOM).mapToObj(String::valueOf).toList());
    assertThat(entries).filteredOn(Entry.NotKept.class::isInstance).hasSize(1);
    Entry.NotKept stated = (Entry.NotKept) entries.get(0);
    assertThat(stated.messages()).isEqualTo(5);
    assertThat(stated.source()).isEqualTo("serial:cable");
    assertThat(stated.station()).contains("bench-1");
    assertThat(stated.first()).isEqualTo(Bench.START.plusSeconds(17));
    assertThat(stated.last()).isEqualTo(Bench.START.plusSeconds(21));
    assertThat(stated.because()).isEqualTo("nothing could be recorded: the disk is full");
    assertThat(heard).filteredOn(h -> h.endsWith("recorded")).hasSize(ROOM);
  }

  @Test
  void whatItsSenderKeepsIsNeverCountedAndHasARoomOfItsOwn() {
    full();
    IntStream.rangeClosed(1, ROOM).forEach(n -> assertThat(offer(n, false, 40)).isTrue());
    IntStream.rangeClosed(101, 100 + ROOM).forEach(n -> assertThat(offer(n, true, 40)).isTrue());
    assertThat(offer(200, true, 40)).isFalse();
    assertThat(loop.hasRoom()).isFalse();
    assertThat(loop.counts().notKept()).isZero();
    room();
    assertThat(loop.hasRoom()).isTrue();
    assertThat(torques(entries())).hasSize(2 * ROOM).doesNotContain("200");
  }

  @Test
  void aLongMessageTakesTheRoomOfSeveral() {
    full();
    offer(1, false, 8 * 4096);
    offer(2, false, 8 * 4096);
    offer(3, false, 1);
    assertThat(loop.counts().notKept()).isEqualTo(1);
    assertThat(loop.counts().waiting()).isEqualTo(2);
    room();
    offer(4, false, 1 << 30);
    await().atMost(LONG).until(() -> torques(entries()).equals(List.of("1", "2", "4")));
  }

  @Test
  void whatWasStoredAlthoughItsCommitFailedIsNotRecordedTwice() {
    how.fault.set(FailingLedger.Fault.STORED_ONCE);
    offer(7, false, 40);
    await().atMost(LONG).until(() -> heard.contains("7 recorded"));
    assertThat(how.failures).hasValue(1);
    assertThat(torques(entries())).containsExactly("7");
    assertThat(loop.counts().events()).isEqualTo(1);
    assertThat(loop.counts().entries()).isEqualTo(2);
  }

  @Test
  void aStatementThatWasStoredAlthoughItsCommitFailedIsNotMadeTwice() {
    full();
    IntStream.rangeClosed(1, ROOM + 2).forEach(n -> offer(n, false, 40));
    how.fault.set(FailingLedger.Fault.STORED_ONCE);
    room();
    List<Entry> entries = entries();
    assertThat(entries).filteredOn(Entry.NotKept.class::isInstance).hasSize(1);
    assertThat(torques(entries)).hasSize(ROOM);
  }

  @Test
  void anOlderCopyOfTheLogIsNotGoneOnWith() throws Exception {
    Path older = Files.copy(files.database(), directory.resolve("older.db"));
    offer(1, false, 40);
    await().atMost(LONG).until(() -> heard.contains("1 recorded"));
    Files.move(files.database(), directory.resolve("moved.db"));
    await().atMost(LONG).until(() -> loop.counts().trouble() != null);
    assertThat(loop.counts().trouble()).contains("was removed or replaced while it was in use");
    Files.deleteIfExists(files.wal());
    Files.copy(older, files.database());
    await()
        .atMost(LONG)
        .until(() -> loop.counts().trouble().contains("is not the one that was written so far"));
    assertThat(loop.counts().trouble()).contains("entry 1 is missing or another");
    assertThat(offer(2, true, 40)).isTrue();
    assertThat(heard).doesNotContain("2 recorded");
  }
}
