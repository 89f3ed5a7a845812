package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.desk.AbandonJob;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.OnDisk;

/**
 * What a query finds is what the documented meaning of each of its parts picks from all entries.
 */
class QueryTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path directory;

  private final Bench bench = Bench.without(Bench.group(3, "order = \"any\""));
  private final Map<String, JsonNode> opened = new HashMap<>();
  private final List<JsonNode> log = new ArrayList<>();

  private void work() {
    Random random = new Random(2);
    bench.release(Bench.group(4, "order = \"any\"").replace("\"A\"", "\"B\""));
    bench.release(Bench.group(3).replace("P-1", "P-2"));
    List<String[]> revisions =
        List.of(new String[] {"P-1", "A"}, new String[] {"P-1", "B"}, new String[] {"P-2", "A"});
    for (int unit = 0; unit < 12; unit++) {
      String[] revision = revisions.get(random.nextInt(3));
      bench.person(
          new witnessmark.desk.OpenJob(
              revision[0],
              Optional.of(revision[1]),
              "U-" + unit % 5,
              Bench.STATION,
              Optional.of("badge-07")));
      String job = bench.shop().active(Bench.STATION).orElseThrow().job();
      for (int i = 0; i < 12; i++) {
        bench.hit(
            "TW-" + (1 + random.nextInt(3)),
            44 + random.nextInt(12) + " N.m",
            "",
            random.nextBoolean() ? "" : "a/" + (1 + random.nextInt(4)));
        bench.rest(random.nextInt(4000));
      }
      bench.person(new AbandonJob(job, Optional.of("badge-07"), "next"));
      bench.hitAt("bench-2", "TW-1", "50 N.m");
    }
    for (Entry entry : bench.log()) {
      JsonNode node = parsed(EntryJson.bytes(entry));
      log.add(node);
      if (node.path("kind").asText().equals("job-opened")) {
        opened.put(node.path("job").asText(), node);
      }
    }
  }

  private static JsonNode parsed(byte[] bytes) {
    try {
      return JSON.readTree(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Each part of the query as it is documented, on the entry itself. */
  private boolean matches(Query q, JsonNode e) {
    JsonNode job = opened.getOrDefault(e.path("job").asText(), JSON.createObjectNode());
    return is(q.unit(), job.path("unit"))
        && is(q.job(), e.path("job"))
        && is(q.procedure(), job.path("procedure"))
        && is(q.revision(), job.path("revision"))
        && is(q.fastener(), e.path("fastener"))
        && is(q.wrench(), first(e.path("event").path("wrench"), e.path("wrench")))
        && is(
            q.operator(),
            first(e.path("event").path("operator"), first(e.path("by"), e.path("operator"))))
        && is(q.station(), e.path("station"))
        && is(q.kind(), e.path("kind"))
        && is(q.verdict(), e.path("verdict"))
        && q.from().filter(t -> e.path("at").asText().compareTo(t) < 0).isEmpty()
        && q.to().filter(t -> e.path("at").asText().compareTo(t) >= 0).isEmpty();
  }

  private static JsonNode first(JsonNode one, JsonNode other) {
    return one.isTextual() ? one : other;
  }

  private static boolean is(Optional<String> asked, JsonNode value) {
    return asked.isEmpty() || (value.isTextual() && value.asText().equals(asked.get()));
  }

  private Query random(Random random) {
    JsonNode like = log.get(random.nextInt(log.size()));
    JsonNode job = opened.getOrDefault(like.path("job").asText(), JSON.createObjectNode());
    String from = log.get(random.nextInt(log.size())).path("at").asText();
    String to = log.get(random.nextInt(log.size())).path("at").asText();
    return new Query(
        perhaps(random, 4, job.path("unit")),
        perhaps(random, 9, like.path("job")),
        perhaps(random, 4, job.path("procedure")),
        perhaps(random, 4, job.path("revision")),
        perhaps(random, 6, like.path("fastener")),
        perhaps(random, 4, first(like.path("event").path("wrench"), like.path("wrench"))),
        perhaps(random, 9, like.path("by")),
        perhaps(random, 6, like.path("station")),
        perhaps(random, 6, like.path("kind")),
        perhaps(random, 6, like.path("verdict")),
        random.nextInt(4) == 0 ? Optional.of(from) : Optional.empty(),
        random.nextInt(4) == 0 ? Optional.of(to) : Optional.empty());
  }

  private static Optional<String> perhaps(Random random, int oneIn, JsonNode value) {
    return value.isTextual() && random.nextInt(oneIn) == 0
        ? Optional.of(value.asText())
        : Optional.empty();
  }

  @Test
  void everyQueryFindsWhatItsPartsMean() {
    work();
    int several = OnDisk.read(directory.resolve("log"), bench.log(), this::compare);
    assertThat(several).as("queries that find some and not all").isGreaterThan(200);
  }

  private int compare(Reading reading) {
    Random random = new Random(3);
    int several = 0;
    for (int i = 0; i < 500; i++) {
      Query query = random(random);
      List<Long> expected = new ArrayList<>();
      for (int n = 0; n < log.size(); n++) {
        if (matches(query, log.get(n))) {
          expected.add((long) n);
        }
      }
      List<Long> found = new ArrayList<>();
      reading.find(query, s -> found.add(s.n()));
      assertThat(found).as(query.toString()).isEqualTo(expected);
      several += found.isEmpty() || found.size() == log.size() ? 0 : 1;
    }
    return several;
  }
}
