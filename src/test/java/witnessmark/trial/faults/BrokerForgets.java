package witnessmark.trial.faults;

import java.nio.file.Path;
import witnessmark.bench.Json;

/**
 * The broker is killed and comes back without its store: it knows no session and retains nothing.
 */
final class BrokerForgets implements Fault {
  @Override
  public String title() {
    return "broker restarted with its store lost";
  }

  @Override
  public String promise() {
    return "the daemon subscribes again, and tells health and every station's expectation again; what"
        + " comes from then on is recorded";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(20 * scale);
      rig.becomes("recorded before", rig::allThere);
      rig.broker.kill();
      rig.broker.loseStore();
      rig.broker.restart();
      rig.becomes(
          "expectation retained again", () -> retained(rig, "bench-1/expect").contains("J-5"));
      rig.becomes("health retained again", () -> retained(rig, "shop-1/health").contains("ok"));
      rig.see("retained again: expect of bench-1, health " + state(rig));
      rig.becomes(
          "listeners are back",
          () -> rig.broker.log().split("Sending SUBACK to verdicts", -1).length > 2);
      kept.send(20 * scale);
      return rig.judged();
    }
  }

  private static String state(Rig rig) {
    return Json.of(retained(rig, "shop-1/health")).path("state").asText();
  }

  private static String retained(Rig rig, String topic) {
    return String.join(
        "", rig.broker.take("witnessmark/v1/" + topic, 1, java.time.Duration.ofSeconds(1)));
  }
}
