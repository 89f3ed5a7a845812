package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Subscriber;
import witnessmark.bench.Workshop;

/** A job typed in by hand with {@code mosquitto_pub}, by docs/messages.md and nothing else. */
class ByHandMqttIT {
  private static final String STATION = "witnessmark/v1/bench-1/";

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop shop;
  private Subscriber verdicts;
  private DaemonProcess daemon;
  private int heard;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory);
    shop = Workshop.furnished(directory).on(broker);
    assertThat(shop.open("RAM-210", "ATR-26-0147", "bench-1")).isEqualTo("J-5");
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
  void aJobIsJudgedStepByStepAndClosed() {
    assertExpected(
        """
        {"station":"bench-1","state":"attest","job":"J-5","unit":"ATR-26-0147","procedure":"RAM-210","revision":"C",
         "done":0,"total":6,"text":"Confirm (attest frame-check): The frame's seats are clean and free of paint.",
         "expect":[{"step":"frame-check","title":"Frame","statement":"The frame's seats are clean and free of paint."}]}
        """);
    shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
    assertExpected(
        """
        {"station":"bench-1","state":"tighten","job":"J-5","unit":"ATR-26-0147","procedure":"RAM-210","revision":"C",
         "done":0,"total":6,"text":"Next: carrier-left/1, final pass, 33 N.m (29.7 to 36.3 N.m).",
         "expect":[{"step":"carrier-left","fastener":"carrier-left/1","pass":"final","target":"33","low":"29.7",
           "high":"36.3","unit":"N.m","anglelow":"20","anglehigh":"60","title":"Axle carrier, left",
           "note":"Position 1 is front top."}]}
        """);
    assertThat(
            tighten(
                1, "\"torque\":\"32.54\",\"unit\":\"N.m\",\"angle\":\"41.2\",\"direction\":\"cw\""))
        .containsAllEntriesOf(
            Map.ofEntries(
                Map.entry("entry", "7"),
                Map.entry("station", "bench-1"),
                Map.entry("wrench", "TW-0417"),
                Map.entry("event", "1"),
                Map.entry("torque", "32.54"),
                Map.entry("unit", "N.m"),
                Map.entry("unitcode", "NU"),
                Map.entry("angle", "41.2"),
                Map.entry("direction", "cw"),
                Map.entry("job", "J-5"),
                Map.entry("fastener", "carrier-left/1"),
                Map.entry("pass", "final"),
                Map.entry("verdict", "in-band"),
                Map.entry("evaluation", "OK"),
                Map.entry("low", "29.7"),
                Map.entry("high", "36.3"),
                Map.entry("bandunit", "N.m"),
                Map.entry("effect", "credited"),
                Map.entry("reason", "next-in-sequence"),
                Map.entry(
                    "text",
                    "carrier-left/1 (final pass): "
                        + "32.54 N.m is in the band of 29.7 to 36.3 N.m. Credited. It was the one fastener due next.")));
    assertThat(Json.fields(verdicts.await(1)))
        .containsAllEntriesOf(
            Map.of(
                "specversion", "1.0",
                "id", "7",
                "source", "witnessmark:shop-1",
                "type", "witnessmark.verdict.v1",
                "datacontenttype", "application/json",
                "subject", "J-5/carrier-left/1",
                "time", shop.entry(7).path("at").asText()));

    assertThat(tighten(2, "\"torque\":25.0,\"unit\":\"N.m\",\"angle\":30"))
        .containsAllEntriesOf(judged("carrier-left/3", "under-torque", "NotOK", "again"))
        .containsEntry("torque", "25.0");
    assertThat(tighten(3, "\"torque\":\"40.00\",\"unit\":\"N.m\",\"angle\":\"25\""))
        .containsAllEntriesOf(judged("carrier-left/3", "over-torque", "NotOK", "nonconforming"));
    assertExpected(
        """
        {"station":"bench-1","state":"dispose","job":"J-5","unit":"ATR-26-0147","procedure":"RAM-210","revision":"C",
         "done":1,"total":6,
         "text":"carrier-left/3 is nonconforming: leave it as it is until somebody has decided (dispose).",
         "expect":[{"fastener":"carrier-left/3","entry":9,"dispositions":[
           {"disposition":"rework","role":"technician"},{"disposition":"replace","role":"technician"},
           {"disposition":"use-as-is","role":"quality"},{"disposition":"scrap","role":"quality"}]}]}
        """);
    shop.run(
        "dispose", "J-5", "carrier-left/3", "--as", "rework", "--by", "badge-11", "--because", "x");
    assertThat(tighten(4, "\"torque\":\"30\",\"unit\":\"N.m\",\"direction\":\"ccw\""))
        .containsEntry("fastener", "carrier-left/3")
        .containsEntry("reason", "loosened-for-rework")
        .containsEntry("effect", "loosened")
        .containsEntry("evaluation", "Undefined")
        .doesNotContainKey("verdict");
    // 24.34 lbf.ft is 33.0006 N.m by the definitions of foot, pound and standard gravity
    assertThat(tighten(5, "\"torque\":\"24.34\",\"unit\":\"lbf.ft\",\"angle\":\"40\""))
        .containsAllEntriesOf(judged("carrier-left/3", "in-band", "OK", "credited"))
        .containsAllEntriesOf(Map.of("torque", "24.34", "unit", "lbf.ft", "unitcode", "M92"));
    assertThat(
            tighten(
                6,
                "\"torque\":\"33\",\"unit\":\"N.m\",\"angle\":\"40\",\"fastener\":\"carrier-left/4\""))
        .containsEntry("fastener", "carrier-left/4")
        .containsEntry("reason", "not-due-yet")
        .containsEntry("effect", "none")
        .containsEntry("evaluation", "Undefined")
        .doesNotContainKey("verdict");
    assertThat(
            tighten(
                7,
                "\"torque\":\"33\",\"unit\":\"N.m\",\"angle\":\"40\",\"fastener\":\"carrier-left/2\""))
        .containsAllEntriesOf(judged("carrier-left/2", "in-band", "OK", "credited"))
        .containsEntry("reason", "named-by-event");
    assertThat(tighten(8, "\"torque\":\"29.7\",\"unit\":\"N.m\",\"angle\":\"60\""))
        .containsAllEntriesOf(judged("carrier-left/4", "in-band", "OK", "credited"));
    assertThat(tighten(9, "\"torque\":\"45\",\"unit\":\"N.m\""))
        .containsAllEntriesOf(judged("cross-member/1", "in-band", "OK", "credited"));

    assertThat(
            tighten(
                10,
                "\"torque\":\"31\",\"unit\":\"N.m\",\"direction\":\"ccw\",\"fastener\":\"carrier-left/1\""))
        .containsEntry("effect", "loosened")
        .containsEntry(
            "text",
            "carrier-left/1 (final pass): loosened with 31 N.m. It is pending again."
                + " Pending again with it: cross-member:final. The reading itself names it.");
    await().untilAsserted(() -> assertThat(expect().path("done").asInt()).isEqualTo(3));
    assertThat(expect().at("/expect/0/fastener").asText()).isEqualTo("carrier-left/1");
    assertThat(shop.attempt("job", "close", "J-5").status()).isEqualTo(1);

    tighten(11, "\"torque\":\"33\",\"unit\":\"N.m\",\"angle\":\"40\"");
    tighten(12, "\"torque\":\"45\",\"unit\":\"N.m\"");
    tighten(13, "\"torque\":\"45\",\"unit\":\"N.m\"");
    await().untilAsserted(() -> assertThat(expect().path("state").asText()).isEqualTo("complete"));
    assertThat(shop.run("job", "close", "J-5", "--by", "badge-07"))
        .isEqualTo("Closed J-5: every fastener and gate stands (entry 21).\n");
    assertThat(shop.attempt("job", "close", "J-5", "--by", "badge-07").err())
        .isEqualTo(
            "Job J-5 is closed already, since "
                + shop.entry(21).path("at").asText()
                + " (entry 21).\n");
    assertExpected(
        "{\"station\":\"bench-1\",\"state\":\"idle\",\"text\":\"No job is open at this station.\"}");

    List<String> csv = shop.run("trace", "--unit", "ATR-26-0147", "--csv").lines().toList();
    assertThat(csv.get(0))
        .isEqualTo(
            "entry,at,kind,job,station,fastener,pass,torque,unit,angle,direction,wrench,event,"
                + "operator,verdict,effect,reason,low,lowunit,high,highunit,atfastener,rule,guard,text,"
                + "assembly,procedure,revision");
    assertThat(csv).hasSize(1 + 17);
    assertThat(csv.get(3))
        .isEqualTo(
            "7,"
                + shop.entry(7).path("at").asText()
                + ",torque,J-5,bench-1,carrier-left/1,final,32.54,N.m,41.2,cw,TW-0417,1,,in-band,credited,"
                + "next-in-sequence,29.7,N.m,36.3,N.m,,simple,,carrier-left/1 (final pass): "
                + "32.54 N.m is in the band of 29.7 to 36.3 N.m. Credited. It was the one fastener due next."
                + ",ATR-26-0147,RAM-210,C");
    assertThat(shop.run("ledger", "verify"))
        .matches("Verified: 22 entries, root [A-Za-z0-9+/]{43}=\\.\n");
  }

  @Test
  void anEventThatComesTwiceIsOneEntryAndCounted() {
    shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
    String event = event(1, "\"torque\":\"33.0\",\"unit\":\"N.m\",\"angle\":\"41\"");
    broker.publish(STATION + "torque", List.of(event, event));
    await()
        .untilAsserted(
            () ->
                assertThat(Json.fields(health()))
                    .containsAllEntriesOf(
                        Map.of(
                            "bridge", "shop-1",
                            "state", "ok",
                            "entries", "8",
                            "events", "1",
                            "repeats", "1",
                            "refused", "0",
                            "links", "{\"broker\":\"up\"}")));
    // the same number with another content is no repeat: it is kept
    broker.publish(STATION + "torque", List.of(event.replace("33.0", "33.1")));
    verdicts.await(2);
    assertThat(verdicts.documents())
        .extracting(d -> d.path("id").asText())
        .containsExactly("7", "8");
    assertThat(shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'torque';"))
        .isEqualTo(2);
  }

  @Test
  void aKilledBridgeIsGoneForALateSubscriberAndBackLater() {
    daemon.kill();
    await()
        .untilAsserted(
            () ->
                assertThat(health().toString())
                    .isEqualTo("{\"bridge\":\"shop-1\",\"state\":\"gone\"}"));
    daemon = shop.daemon(broker);
    assertThat(health().path("state").asText()).isEqualTo("ok");
  }

  @Test
  void aJobThatEndedWhileTheBridgeWasAwayIsExpectedNoMore() {
    await().untilAsserted(() -> assertThat(expect().path("state").asText()).isEqualTo("attest"));
    daemon.stop();
    assertThat(health().path("state").asText()).isEqualTo("gone");
    assertExpected(
        "{\"station\":\"bench-1\",\"state\":\"not-recording\",\"text\":\"Stop: nothing is being"
            + " recorded, so nothing counts. Wait until this says what is next. (the bridge was"
            + " stopped)\"}");
    shop.run("job", "abandon", "J-5", "--because", "the frame was scrapped");
    daemon = shop.daemon(broker);
    assertExpected(
        "{\"station\":\"bench-1\",\"state\":\"idle\",\"text\":\"No job is open at this station.\"}");
  }

  private Map<String, String> tighten(int number, String fields) {
    broker.publish(STATION + "torque", event(number, fields).getBytes(UTF_8));
    return verdicts.data(++heard);
  }

  private static String event(int number, String fields) {
    return "{\"wrench\":\"TW-0417\",\"event\":" + number + "," + fields + "}";
  }

  private static Map<String, String> judged(
      String fastener, String verdict, String evaluation, String effect) {
    return Map.of(
        "fastener", fastener, "verdict", verdict, "evaluation", evaluation, "effect", effect);
  }

  /** What somebody hears who subscribes only now. */
  private JsonNode expect() {
    return late(STATION + "expect");
  }

  private JsonNode health() {
    return late("witnessmark/v1/shop-1/health");
  }

  private JsonNode late(String topic) {
    List<String> retained = broker.take(topic, 1, Duration.ofSeconds(5));
    assertThat(retained).as("retained on " + topic).hasSize(1);
    return Json.of(retained.get(0));
  }

  private void assertExpected(String json) {
    await().untilAsserted(() -> assertThat(expect()).isEqualTo(Json.of(json)));
  }
}
