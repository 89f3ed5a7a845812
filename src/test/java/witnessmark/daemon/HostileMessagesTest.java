package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.DriverManager;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.config.MqttConfig;
import witnessmark.decode.Decoded;
import witnessmark.decode.Malformed;
import witnessmark.decode.Messages;
import witnessmark.decode.Torqued;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.link.Cut;
import witnessmark.link.Delivery;
import witnessmark.link.mqtt.MqttSettings;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.Loop;
import witnessmark.record.Shelf;

/** What somebody at the broker may send, up to what MQTT allows. */
class HostileMessagesTest {
  private static final Optional<String> NO = Optional.empty();

  @TempDir Path directory;
  private LedgerFiles files;

  @BeforeEach
  void begin() {
    files = new Shelf(directory.resolve("log"), Bench.empty().log()).files();
  }

  private MqttIntake intake(Loop loop) {
    MqttSettings settings =
        new MqttSettings(
            "shop",
            "tcp://127.0.0.1:1883",
            "witnessmark-shop-1",
            NO,
            NO,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of("witnessmark/v1/+/torque"),
            List.of(),
            List.of(),
            "witnessmark/v1/shop-1/health",
            new byte[0]);
    return new MqttIntake(
        loop,
        new MqttConfig(settings, false, Set.of(), List.of(), List.of()),
        new Neighbours("shop-1", "2026-11-26T10:00:00Z", "shop"));
  }

  private static Delivery delivery(String topic, byte[] bytes, Optional<Cut> cut) {
    return new Delivery("shop", topic, bytes, Instant.now(), true, false, cut, () -> {});
  }

  private List<Entry> recorded(List<Delivery> deliveries) throws Exception {
    List<Entry> entries = new ArrayList<>();
    try (Loop loop = new Loop(1000, () -> SqliteLedger.open(files), () -> false, () -> {})) {
      loop.start();
      MqttIntake intake = intake(loop);
      deliveries.forEach(d -> assertThat(intake.offer(d)).isTrue());
      await().until(() -> loop.counts().entries() >= 2 + deliveries.size());
    }
    try (var db = DriverManager.getConnection("jdbc:sqlite:" + files.database());
        var s = db.createStatement();
        var rows = s.executeQuery("SELECT bytes FROM entry WHERE n > 1 ORDER BY n")) {
      while (rows.next()) {
        entries.add(EntryJson.read(rows.getBytes(1)));
      }
    }
    return entries;
  }

  @Test
  void noTopicClimbsOrMatchesOthersOrMovesTheCursor() throws Exception {
    byte[] event = "{\"wrench\":\"TW-0417\",\"torque\":\"33\",\"unit\":\"N.m\"}".getBytes(UTF_8);
    List<String> topics =
        List.of(
            "witnessmark/v1/../torque",
            "witnessmark/v1/./torque",
            "witnessmark/v1/+/torque",
            "witnessmark/v1/#",
            "witnessmark/v1/bench-1/torque/../../../etc/passwd",
            "witnessmark/v1//torque",
            "witnessmark/v1/bench 1/torque",
            "witnessmark/v1/\u001b[2Jbench-1/torque",
            "witnessmark/v1/bench-1\r\nentries=9/torque",
            "witnessmark/v1/\u202e1-hcneb/torque",
            "$SYS/broker/uptime",
            "witnessmark/v1/" + "x".repeat(10_000) + "/torque");
    List<Entry> entries =
        recorded(topics.stream().map(t -> delivery(t, event, Optional.empty())).toList());
    assertThat(entries).hasSameSizeAs(topics);
    for (int i = 0; i < topics.size(); i++) {
      Entry.Refused refused = (Entry.Refused) entries.get(i);
      assertThat(refused.station()).as(topics.get(i)).isEmpty();
      assertThat(refused.reason()).startsWith("the topic names no station; ");
      assertThat(refused.sha256()).isEqualTo(sha256(event));
      assertThat(refused.head()).isEqualTo(event);
      assertThat(refused.source().codePoints())
          .noneMatch(Character::isISOControl)
          .noneMatch(c -> Character.getType(c) == Character.FORMAT)
          .hasSizeLessThan(320);
    }
    assertThat(((Entry.Refused) entries.get(7)).source())
        .isEqualTo("mqtt:shop:witnessmark/v1/?[2Jbench-1/torque");
    assertThat(((Entry.Refused) entries.get(11)).source()).endsWith("… (10022 characters)");
  }

  @Test
  void aMessageThatWasTooLargeToKeepIsOnRecordByItsHash() throws Exception {
    byte[] head = "x".repeat(4096).getBytes(UTF_8);
    Cut cut = new Cut(head, 200_000_000, "ab".repeat(32));
    List<Entry> entries =
        recorded(
            List.of(
                delivery("witnessmark/v1/bench-1/torque", head, Optional.of(cut)),
                delivery("plant/x", head, Optional.of(cut))));
    Entry.Refused refused = (Entry.Refused) entries.get(0);
    assertThat(refused.station()).contains("bench-1");
    assertThat(refused.reason())
        .isEqualTo("the payload has 200000000 bytes; at most 4194304 are allowed");
    assertThat(refused.length()).isEqualTo(200_000_000);
    assertThat(refused.sha256()).isEqualTo("ab".repeat(32));
    assertThat(((Entry.Refused) entries.get(1)).length()).isEqualTo(200_000_000);
  }

  @Test
  void whatWaitsForTheDiskIsBoundedInBytes() {
    try (Loop loop = new Loop(1000, () -> SqliteLedger.open(files), () -> false, () -> {})) {
      MqttIntake intake = intake(loop);
      byte[] large = new byte[4 << 20];
      int taken = 0;
      while (taken < 100 && intake.offer(delivery("a/b", large, Optional.empty()))) {
        taken++;
      }
      assertThat(taken).isEqualTo(8);
      assertThat(intake.hasRoom()).isFalse();
      loop.start();
      await().until(intake::hasRoom);
      assertThat(intake.offer(delivery("a/b", large, Optional.empty()))).isTrue();
    }
  }

  @Test
  void whatIsMadeToExhaustTheReaderIsRefusedSoonAndInLittleMemory() {
    int size = (4 << 20) - 100;
    List<String> payloads =
        List.of(
            "[".repeat(size),
            "{\"a\":".repeat(size / 5),
            "[" + "1,".repeat(size / 2) + "1]",
            "[" + "{},".repeat(size / 3) + "{}]",
            "{\"wrench\":\"TW-0417\",\"unit\":\"N.m\",\"torque\":" + "9".repeat(size - 60) + "}",
            "{\"wrench\":\"TW-0417\",\"unit\":\"N.m\",\"torque\":1e999999999}",
            "{\"wrench\":\"TW-0417\",\"unit\":\"N.m\",\"torque\":1e-999999999}",
            "{\"wrench\":\"" + "x".repeat(size - 60) + "\",\"torque\":1}",
            "{\"" + "\\u0041".repeat(size / 6 - 20) + "\":1}",
            "\"".repeat(size),
            "\u0000".repeat(size),
            "x".repeat(5 << 20));
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    for (String payload : payloads) {
      byte[] bytes = payload.getBytes(UTF_8);
      long allocated = threads.getCurrentThreadAllocatedBytes();
      long began = threads.getCurrentThreadCpuTime();
      List<Decoded> decoded = Messages.torque(bytes);
      long millis = (threads.getCurrentThreadCpuTime() - began) / 1_000_000;
      allocated = threads.getCurrentThreadAllocatedBytes() - allocated;
      String what = payload.substring(0, 12) + "… of " + bytes.length;
      assertThat(decoded).as(what).noneMatch(Torqued.class::isInstance);
      assertThat(((Malformed) decoded.get(0)).sample().sha256())
          .as(what)
          .isEqualTo(decoded.size() > 1 ? sha256("1".getBytes(UTF_8)) : sha256(bytes));
      // a whole second for the largest; classes that are loaded first are in it
      assertThat(millis).as(what).isLessThan(2_000);
      assertThat(allocated).as(what).isLessThan(64L << 20);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (java.security.NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }
}
