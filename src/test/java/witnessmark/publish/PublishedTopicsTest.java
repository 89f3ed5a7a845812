package witnessmark.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.decode.Messages;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.docs.Schemas;
import witnessmark.entry.Entry;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.link.Outlet;
import witnessmark.link.Post;
import witnessmark.pipeline.Arrival;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.Journal;
import witnessmark.procedure.ProcedureFile;

/** The topics that a publisher really uses are those of docs/asyncapi.json, retained alike. */
class PublishedTopicsTest {
  private static final byte[] HEALTH =
      "{\"bridge\":\"shop-1\",\"state\":\"gone\"}".getBytes(StandardCharsets.UTF_8);

  @TempDir private Path directory;

  /** A broker that takes everything and notes whether it was to be retained. */
  private static final class Noting implements Outlet {
    final Map<String, Boolean> topics = new ConcurrentHashMap<>();
    final Map<String, byte[]> last = new ConcurrentHashMap<>();

    @Override
    public boolean publish(String topic, byte[] payload, boolean retained) {
      last.put(topic, payload);
      topics.put(topic, retained);
      return true;
    }

    @Override
    public int publish(List<Post> posts) {
      posts.forEach(p -> publish(p.topic(), p.payload(), false));
      return posts.size();
    }

    @Override
    public boolean connected() {
      return true;
    }
  }

  @Test
  void theTopicsAreThoseOfTheDocument() throws IOException {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    oneReading(files);
    Noting broker = new Noting();
    try (Publisher publisher =
        new Publisher(
            "shop-1",
            "shop",
            broker,
            station -> true,
            Set::of,
            () -> SqliteReading.open(files),
            () -> new HealthNow("ok", Optional.empty(), HEALTH),
            Duration.ofSeconds(10),
            Duration.ofSeconds(60))) {
      publisher.start();
      await().atMost(Duration.ofSeconds(30)).until(() -> broker.topics.size() >= 5);
    }
    assertThat(new TreeMap<>(broker.topics)).isEqualTo(documented());
    broker.last.forEach(
        (topic, payload) ->
            assertThat(
                    Schemas.faults(
                        topic.substring(topic.lastIndexOf('/') + 1), json(topic, payload)))
                .as(topic)
                .isEmpty());
  }

  /** A checkpoint is a text by itself, which its schema says as of a text in JSON. */
  private static byte[] json(String topic, byte[] payload) {
    return topic.endsWith("/checkpoint")
        ? TextNode.valueOf(new String(payload, StandardCharsets.UTF_8))
            .toString()
            .getBytes(StandardCharsets.UTF_8)
        : payload;
  }

  @Test
  void ofAStationThatIsNotServedHereNothingIsTold() {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    oneReading(files);
    Noting broker = new Noting();
    Publisher publisher =
        new Publisher(
            "shop-1",
            "shop",
            broker,
            station -> !station.equals(Bench.STATION),
            Set::of,
            () -> SqliteReading.open(files),
            () -> new HealthNow("ok", Optional.empty(), HEALTH),
            Duration.ofSeconds(10),
            Duration.ofSeconds(60));
    publisher.start();
    await().atMost(Duration.ofSeconds(30)).until(() -> !broker.topics.isEmpty());
    publisher.close();
    assertThat(broker.topics)
        .containsOnlyKeys("witnessmark/v1/shop-1/health", "witnessmark/v1/shop-1/checkpoint");
  }

  private static void oneReading(LedgerFiles files) {
    String procedure = Bench.group(1);
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      Journal journal = new Journal(ledger);
      journal.note(new Entry.LogOpened(Bench.START, ledger.origin()));
      journal.carryOut(new EnrolOperator("badge-07", "bench 1", Optional.empty()), Bench.START);
      journal.carryOut(Bench.wrench("TW-1"), Bench.START);
      journal.carryOut(
          new Release(ProcedureFile.parse("p.toml", procedure), procedure, Optional.empty()),
          Bench.START);
      journal.carryOut(
          new OpenJob("P-1", Optional.empty(), "ATR-26-0147", Bench.STATION, Optional.empty()),
          Bench.START);
      List<Arrival> arrivals =
          Stream.concat(
                  Messages.torque(
                      "{\"wrench\":\"TW-1\",\"event\":1,\"torque\":\"50\",\"unit\":\"N.m\"}"
                          .getBytes(StandardCharsets.UTF_8))
                      .stream(),
                  Messages.scan("{\"scan\":\"wm:status\"}".getBytes(StandardCharsets.UTF_8))
                      .stream())
              .map(
                  d ->
                      new Arrival(Optional.of(Bench.STATION), "test", Bench.START, false, false, d))
              .toList();
      journal.take(List.of(arrivals));
    }
  }

  /** Each topic of an operation that sends, and whether it is retained. */
  private static Map<String, Boolean> documented() throws IOException {
    JsonNode document = Schemas.parse(Files.readString(Path.of("docs/asyncapi.json")));
    Map<String, Boolean> topics = new TreeMap<>();
    for (JsonNode operation : document.path("operations")) {
      if (operation.path("action").textValue().equals("send")) {
        String channel = operation.at("/channel/$ref").textValue().substring(1);
        String address = document.at(channel).path("address").textValue();
        topics.put(
            address.replace("{station}", Bench.STATION).replace("{bridge}", "shop-1"),
            operation.at("/bindings/mqtt/retain").booleanValue());
      }
    }
    return topics;
  }
}
