package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;
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
import witnessmark.bench.PtyPair;
import witnessmark.bench.Subscriber;
import witnessmark.bench.Workshop;

/** A job done with a scanner and a wrench and nothing typed, by docs/messages.md. */
class ByScanIT {
  private static final String STATION = "witnessmark/v1/bench-1/";
  private static final String ACK = "06";
  private static final String NAK = "15";

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop shop;
  private Subscriber answers;
  private Subscriber verdicts;
  private DaemonProcess daemon;
  private long heard = -1;
  private int pulls;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory);
    shop = Workshop.furnished(directory).on(broker);
    answers = Subscriber.to(broker, "answers", "witnessmark/v1/+/scanned");
    verdicts = Subscriber.to(broker, "verdicts", "witnessmark/v1/+/verdict");
  }

  @AfterEach
  void end() {
    daemon.close();
    answers.close();
    verdicts.close();
    broker.close();
  }

  @Test
  void aJobIsOpenedWorkedAndClosedByScans() {
    daemon = shop.daemon(broker);
    assertThat(scan("badge-07")).containsEntry("meaning", "operator");
    assertThat(scan("ATR-26-0147"))
        .isEqualTo(
            Map.of(
                "entry", "7",
                "station", "bench-1",
                "scan", "ATR-26-0147",
                "job", "J-8",
                "meaning", "open",
                "text",
                    "Opened J-8 on unit ATR-26-0147 by RAM-210 revision C. Confirm (attest"
                        + " frame-check): The frame's seats are clean and free of paint."));
    assertThat(scan("frame-check"))
        .containsEntry("meaning", "attest")
        .containsEntry(
            "text",
            "badge-07 confirms frame-check. "
                + "Next: carrier-left/1, final pass, 33 N.m (29.7 to 36.3 N.m).");
    JsonNode envelope = answers.await(3);
    assertThat(envelope.path("type").asText()).isEqualTo("witnessmark.scan.v1");
    assertThat(envelope.path("subject").asText()).isEqualTo("J-8");
    assertThat(scan("wm:close"))
        .containsEntry("meaning", "declined")
        .containsEntry(
            "text",
            "Job J-8 cannot be closed yet. "
                + "Next: carrier-left/1, final pass, 33 N.m (29.7 to 36.3 N.m).");
    assertThat(scan("carrier-left/1"))
        .containsEntry("meaning", "fastener")
        .containsEntry("fastener", "carrier-left/1");
    assertThat(tighten("33")).containsEntry("reason", "named-by-scan");
    // the bridge goes away in the middle; what was announced and who works there stay
    assertThat(scan("carrier-left/3")).containsEntry("meaning", "fastener");
    daemon.kill();
    daemon = shop.daemon(broker);
    assertThat(tighten("33"))
        .containsEntry("reason", "named-by-scan")
        .containsEntry("fastener", "carrier-left/3");
    for (String torque : List.of("33", "33", "45", "45")) {
      assertThat(tighten(torque)).containsEntry("effect", "credited");
    }
    assertThat(scan("wm:close"))
        .containsEntry("meaning", "close")
        .containsEntry("text", "Closed J-8 on unit ATR-26-0147: every fastener and gate stands.");
    assertThat(
            shop.ledger()
                .run("SELECT kind, job, operator FROM trace WHERE n > 4 AND kind <> 'scan';"))
        .containsExactly(
            "operator-at-station||badge-07",
            "job-opened|J-8|badge-07",
            "attested|J-8|badge-07",
            "torque|J-8|badge-07",
            "torque|J-8|badge-07",
            "torque|J-8|badge-07",
            "torque|J-8|badge-07",
            "torque|J-8|badge-07",
            "torque|J-8|badge-07",
            "job-closed|J-8|badge-07");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 22 entries");
  }

  @Test
  void whereSeveralProceduresFitTheOneScannedBeforeIsTakenAlsoAfterARestart() {
    shop.release("RAM-220.toml", Workshop.RAM_210.replace("\"RAM-210\"", "\"RAM-220\""));
    daemon = shop.daemon(broker);
    assertThat(scan("ATR-26-0147"))
        .containsEntry("meaning", "declined")
        .containsEntry(
            "text",
            "Unit ATR-26-0147 fits RAM-210, RAM-220. Scan the procedure first, then the unit.");
    assertThat(scan("RAM-220")).containsEntry("meaning", "procedure");
    assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    daemon = shop.daemon(broker);
    assertThat(scan("ATR-26-0147"))
        .containsEntry("meaning", "open")
        .containsEntry("procedure", "RAM-220");
    assertThat(scan("wm:suspend")).containsEntry("meaning", "suspend");
    assertThat(scan("ATR-26-0148")).containsEntry("meaning", "declined");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified:");
  }

  @Test
  void aScannerOnASerialLineIsAnsweredByATone() {
    try (PtyPair cable = PtyPair.plug(directory)) {
      shop.scanner(cable, "bench-1");
      daemon = shop.daemon(broker);
      assertThat(tone(cable, "badge-07\r")).isEqualTo(ACK);
      assertThat(tone(cable, "4012345678901\r")).isEqualTo(NAK);
      assertThat(tone(cable, "\u0001\r")).isEqualTo(NAK);
      assertThat(tone(cable, "wm:attest\r")).isEqualTo(NAK);
      assertThat(tone(cable, "ATR-26-0147\r")).isEqualTo(ACK);
      assertThat(tone(cable, "wm:attest\r")).isEqualTo(ACK);
    }
    assertThat(answers.data(5)).containsEntry("meaning", "attest");
    assertThat(shop.ledger().run("SELECT kind, station FROM trace WHERE n > 4;"))
        .containsExactly(
            "scan|bench-1",
            "operator-at-station|bench-1",
            "scan|bench-1",
            "refused|bench-1",
            "scan|bench-1",
            "scan|bench-1",
            "job-opened|bench-1",
            "scan|bench-1",
            "attested|");
    assertThat(shop.entry(5).path("source").asText()).isEqualTo("serial:scanner");
  }

  private Map<String, String> scan(String code) {
    broker.publish(STATION + "scan", List.of("{\"scan\":\"" + code + "\"}"));
    return next(answers);
  }

  private Map<String, String> tighten(String torque) {
    broker.publish(
        STATION + "torque",
        List.of(
            "{\"wrench\":\"TW-0417\",\"event\":"
                + ++pulls
                + ",\"torque\":\""
                + torque
                + "\",\"unit\":\"N.m\",\"angle\":\"40\"}"));
    return next(verdicts);
  }

  /** The data of the next document; one of an older entry was told again after a kill. */
  private Map<String, String> next(Subscriber subscriber) {
    Map<String, String> data =
        await()
            .atMost(Duration.ofSeconds(20))
            .until(
                () ->
                    subscriber.documents().stream()
                        .filter(d -> d.path("id").asLong() > heard)
                        .findFirst()
                        .map(d -> Json.fields(d.path("data")))
                        .orElse(Map.of()),
                d -> !d.isEmpty());
    heard = Long.parseLong(data.get("entry"));
    return data;
  }

  private static String tone(PtyPair cable, String frame) {
    cable.write(frame.getBytes(US_ASCII));
    byte[] tone = cable.read(1, Duration.ofSeconds(20));
    assertThat(tone).as(frame).hasSize(1);
    return String.format("%02x", tone[0]);
  }
}
