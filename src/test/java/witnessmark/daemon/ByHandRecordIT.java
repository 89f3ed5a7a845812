package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Subscriber;
import witnessmark.bench.Workshop;

/** What comes by MQTT and fits no job, or fits nothing at all, is on record all the same. */
class ByHandRecordIT {
  private static final String TORQUE = "witnessmark/v1/bench-1/torque";
  private static final String SCAN = "witnessmark/v1/bench-1/scan";

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop shop;
  private Subscriber verdicts;
  private DaemonProcess daemon;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory);
    shop = Workshop.furnished(directory).on(broker);
    verdicts = Subscriber.to(broker, "listener", "witnessmark/v1/+/verdict");
    daemon = shop.daemon(broker);
  }

  @AfterEach
  void end() {
    daemon.close();
    verdicts.close();
    broker.close();
  }

  @Test
  void bytesThatAreNoEventAreKeptWithTheirHashAndStopNothing() throws Exception {
    byte[] noise = new byte[10_000];
    new Random(7).nextBytes(noise);
    broker.publish(TORQUE, noise);
    byte[] broken = "{\"wrench\":\"TW-0417\",\"torque\":\"32.54\",\r\n".getBytes(UTF_8);
    broker.publish(TORQUE, broken);
    broker.publish("witnessmark/v1/a station/torque", "{}".getBytes(UTF_8));
    broker.publish(
        TORQUE, List.of("{\"wrench\":\"TW-0417\",\"event\":1,\"torque\":\"33\",\"unit\":\"N.m\"}"));
    assertThat(verdicts.data(1))
        .containsAllEntriesOf(
            Map.of(
                "entry", "8",
                "effect", "none",
                "reason", "no-active-job",
                "evaluation", "Undefined",
                "text",
                    "No job is open at this station. Open or resume one, then tighten again or assign the reading. "
                        + "The reading is 33 N.m. Nothing is credited."))
        .doesNotContainKeys("verdict", "job", "fastener");
    assertRefused(5, noise);
    assertRefused(6, broken);
    assertThat(shop.entry(6).path("station").asText()).isEqualTo("bench-1");
    assertThat(shop.entry(6).path("source").asText()).isEqualTo("mqtt:broker:" + TORQUE);
    assertRefused(7, "{}".getBytes(UTF_8));
    assertThat(shop.entry(7).path("reason").asText())
        .isEqualTo(
            "the topic names no station; a station's name is 1 to 64 letters, digits, and . _ -");
    String logged = "Loop: refused, and on record source=\"mqtt:broker:";
    await()
        .untilAsserted(
            () ->
                assertThat(daemon.log().lines().filter(l -> l.contains(logged + TORQUE)))
                    .as("the first at once, the second when its second is over")
                    .hasSize(2)
                    .anyMatch(l -> l.contains(shop.entry(5).path("reason").asText()))
                    .anyMatch(l -> l.contains(shop.entry(6).path("reason").asText())));
    assertThat(daemon.log())
        .contains(logged + "witnessmark/v1/a station/torque\" reason=\"the topic");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 9 entries");
  }

  private void assertRefused(long n, byte[] sent) throws Exception {
    String head =
        Base64.getEncoder().encodeToString(Arrays.copyOf(sent, Math.min(4096, sent.length)));
    String hash = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(sent));
    assertThat(Json.fields(shop.entry(n)))
        .containsAllEntriesOf(
            Map.of("kind", "refused", "head", head, "length", "" + sent.length, "sha256", hash));
    assertThat(shop.entry(n).path("reason").asText()).isNotEmpty();
  }

  @Test
  void aBadElementOfABurstCostsOnlyItself() {
    broker.publish(
        TORQUE,
        List.of(
            "[{\"wrench\":\"TW-0417\",\"event\":1,\"torque\":\"33\",\"unit\":\"N.m\"},"
                + "{\"wrench\":\"TW-0417\",\"event\":2,\"torque\":\"33\",\"unit\":\"Nm\"},"
                + "{\"wrench\":\"TW-0417\",\"event\":3,\"torque\":\"34\",\"unit\":\"N.m\"}]"));
    verdicts.await(2);
    assertThat(shop.ledger().run("SELECT n, kind, number FROM trace WHERE n >= 5;"))
        .containsExactly("5|torque|1", "6|refused|", "7|torque|3");
    String bad = "{\"wrench\":\"TW-0417\",\"event\":2,\"torque\":\"33\",\"unit\":\"Nm\"}";
    assertThat(new String(Base64.getDecoder().decode(shop.entry(6).path("head").asText()), UTF_8))
        .isEqualTo(bad);
    assertThat(shop.entry(6).path("reason").asText())
        .isEqualTo(
            "unit \"Nm\" is unknown; did you mean \"N.m\"? Allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm");
    assertThat(shop.entry(7).path("raw").asText())
        .isEqualTo("{\"wrench\":\"TW-0417\",\"event\":3,\"torque\":\"34\",\"unit\":\"N.m\"}");
  }

  @Test
  void aWrenchThatNobodyEnrolledIsRecordedAndAcceptsNothing() {
    shop.open("RAM-210", "ATR-26-0147", "bench-1");
    shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
    broker.publish(
        TORQUE,
        List.of(
            "{\"wrench\":\"TW-9999\",\"event\":1,\"torque\":\"33\",\"unit\":\"N.m\",\"angle\":\"40\"}"));
    assertThat(verdicts.data(1))
        .containsAllEntriesOf(
            Map.of(
                "wrench", "TW-9999",
                "fastener", "carrier-left/1",
                "evaluation", "Undefined",
                "effect", "again",
                "objections", "[\"wrench-not-enrolled\"]",
                "text",
                    "carrier-left/1 (final pass): 33 N.m is in the band of 29.7 to 36.3 N.m. "
                        + "Wrench TW-9999 is not enrolled: use an enrolled one. Not accepted: tighten it again. It was the one fastener due next."))
        .doesNotContainKey("verdict");
    assertThat(Json.of(shop.attempt("job", "status", "J-5", "--json").out()).path("done").asInt())
        .isZero();
  }

  @Test
  void aScannedBadgeNamesThePersonAndAScannedPositionTheFastener() {
    shop.open("RAM-210", "ATR-26-0147", "bench-1");
    shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
    String reading = "\"torque\":\"33\",\"unit\":\"N.m\",\"angle\":\"40\"}";
    broker.publish(
        SCAN,
        List.of(
            "{\"scan\":\"badge-11\"}",
            "{\"scan\":\"carrier-left/3\",\"operator\":\"badge-07\"}",
            "{\"scan\":\"4012345678901\"}"));
    await().until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 11);
    broker.publish(TORQUE, List.of("{\"wrench\":\"TW-0417\",\"event\":1," + reading));
    // the scan holds for the next event only, and carrier-left/3 is not due before carrier-left/1
    assertThat(verdicts.data(1))
        .containsEntry("fastener", "carrier-left/3")
        .containsEntry("reason", "not-due-yet");
    broker.publish(TORQUE, List.of("{\"wrench\":\"TW-0417\",\"event\":2," + reading));
    assertThat(verdicts.data(2))
        .containsEntry("fastener", "carrier-left/1")
        .containsEntry("reason", "next-in-sequence");
    broker.publish(SCAN, List.of("{\"scan\":\"carrier-left/3\"}"));
    await().until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 14);
    broker.publish(TORQUE, List.of("{\"wrench\":\"TW-0417\",\"event\":3," + reading));
    assertThat(verdicts.data(3))
        .containsEntry("fastener", "carrier-left/3")
        .containsEntry("reason", "named-by-scan")
        .containsEntry("effect", "credited");
    assertThat(shop.ledger().run("SELECT n, kind, operator, fastener FROM trace WHERE n >= 7;"))
        .containsExactly(
            "7|scan||",
            "8|operator-at-station|badge-11|",
            "9|scan|badge-07|carrier-left/3",
            "10|scan||",
            "11|torque|badge-11|carrier-left/3",
            "12|torque|badge-11|carrier-left/1",
            "13|scan||carrier-left/3",
            "14|torque|badge-11|carrier-left/3");
    assertThat(shop.entry(7).path("text").asText())
        .isEqualTo("badge-11 works at bench-1 from now on.");
    assertThat(shop.entry(10).path("text").asText())
        .isEqualTo(
            "This code means nothing at bench-1: scan a badge, a unit, a job, a procedure, or a position or step of the job here.");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 15 entries");
  }
}
