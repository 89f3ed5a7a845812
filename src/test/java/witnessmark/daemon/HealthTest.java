package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.docs.Schemas;
import witnessmark.entry.Entry;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.link.LinkState;
import witnessmark.link.LinkStatus;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.Counts;
import witnessmark.pipeline.Journal;
import witnessmark.pipeline.Loop;
import witnessmark.pipeline.Message;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Sender;

class HealthTest {
  private static final Instant SINCE = Instant.parse("2026-11-25T06:58:12Z");

  @TempDir private java.nio.file.Path directory;

  private static ObjectNode message(Counts counts, LinkState... states) {
    List<LinkStatus> links =
        java.util.stream.IntStream.range(0, states.length)
            .mapToObj(i -> new LinkStatus("link-" + i, states[i], "detail " + i, SINCE))
            .toList();
    byte[] bytes =
        new Health("shop-1", SINCE, counts, () -> links, Optional::empty).now().message();
    assertThat(Schemas.faults("health", bytes)).isEmpty();
    return (ObjectNode) Schemas.parse(new String(bytes, StandardCharsets.UTF_8));
  }

  private static Set<String> names(JsonNode message) {
    Set<String> names = new TreeSet<>();
    message.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void allIsWellWhileEveryLinkIsUp() {
    ObjectNode message = message(new Counts(), LinkState.UP, LinkState.UP);
    assertThat(message.path("state").textValue()).isEqualTo("ok");
    assertThat(message.path("since").textValue()).isEqualTo("2026-11-25T06:58:12Z");
    assertThat(message.path("links"))
        .isEqualTo(Schemas.parse("{\"link-0\":\"up\",\"link-1\":\"up\"}"));
  }

  @Test
  void aLinkThatIsNotUpIsNamedWithWhatIsInItsWay() {
    for (LinkState state : LinkState.values()) {
      if (state != LinkState.UP) {
        ObjectNode message = message(new Counts(), LinkState.UP, state);
        assertThat(message.path("state").textValue()).isEqualTo("degraded");
        assertThat(message.path("reason").textValue()).isEqualTo("link-1: detail 1");
        assertThat(names(message)).isEqualTo(Schemas.properties("health", ""));
      }
    }
  }

  @Test
  void aLogThatCannotBeWrittenGoesBeforeAnyLink() {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      new Journal(ledger).note(new Entry.LogOpened(Bench.START, ledger.origin()));
    }
    AtomicBoolean broken = new AtomicBoolean();
    Loop loop =
        new Loop(16, () -> failing(SqliteLedger.open(files), broken), () -> false, () -> {});
    loop.start();
    broken.set(true);
    loop.offer(
        new Message(
            Optional.of("bench-1"),
            "test",
            SINCE,
            false,
            0,
            () -> witnessmark.decode.Messages.torque(new byte[0]),
            () -> witnessmark.decode.Sample.of(new byte[0]),
            new Keeping()),
        Duration.ZERO);
    await().atMost(Duration.ofSeconds(30)).until(() -> loop.counts().trouble() != null);
    ObjectNode message = message(loop.counts(), LinkState.WAITING);
    assertThat(message.path("state").textValue()).isEqualTo("degraded");
    assertThat(message.path("reason").textValue())
        .isEqualTo("Nothing can be recorded: the disk is full");
    broken.set(false);
    await().atMost(Duration.ofSeconds(30)).until(() -> loop.counts().trouble() == null);
    loop.close();
    ObjectNode after = message(loop.counts());
    assertThat(after.path("state").textValue()).isEqualTo("ok");
    assertThat(after.path("entries").longValue()).isEqualTo(2);
    assertThat(after.path("refused").longValue()).isEqualTo(1);
  }

  private record Keeping() implements Sender {
    @Override
    public boolean keeps() {
      return true;
    }

    @Override
    public void recorded(List<Outcome> outcomes) {
      // nobody asks
    }

    @Override
    public void waits() {
      // nobody asks
    }

    @Override
    public void lost() {
      throw new AssertionError("it is kept");
    }
  }

  /** The ledger, whose disk is full while {@code broken}. */
  private static Ledger failing(Ledger ledger, AtomicBoolean broken) {
    return new Ledger() {
      @Override
      public String origin() {
        return ledger.origin();
      }

      @Override
      public witnessmark.ledger.Live live() {
        return ledger.live();
      }

      @Override
      public Appending begin() {
        if (broken.get()) {
          throw new LedgerException("the disk is full");
        }
        return ledger.begin();
      }

      @Override
      public void probe() {
        begin().close();
      }

      @Override
      public long inPlace() {
        return ledger.inPlace();
      }

      @Override
      public void close() {
        ledger.close();
      }
    };
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bridge|",
        "state|",
        "since|",
        "entries|",
        "events|",
        "repeats|",
        "refused|",
        "links|",
        "state|\"gone\"",
        "state|\"degraded\"",
        "state|\"fine\"",
        "reason|\"why\"",
        "since|\"yesterday\"",
        "entries|-1",
        "links|[]",
        "links|{\"shop\":\"open\"}",
        "links|{\"a shop\":\"up\"}",
      })
  void aWrongMessageDoesNotValidate(String field, String json) {
    ObjectNode bad = message(new Counts(), LinkState.UP);
    if (json == null) {
      bad.remove(field);
    } else {
      bad.set(field, Schemas.parse(json));
    }
    assertThat(Schemas.faults("health", bad.toString())).as("%s", bad).isNotEmpty();
  }
}
