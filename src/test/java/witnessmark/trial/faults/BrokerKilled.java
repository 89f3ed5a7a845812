package witnessmark.trial.faults;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** The broker is killed while readings come, and started again with what it has in its store. */
final class BrokerKilled implements Fault {
  @Override
  public String title() {
    return "broker killed and restarted";
  }

  @Override
  public String promise() {
    return "the link comes back by itself; what the broker had saved and what senders give it again"
        + " is on record once";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      Cable cable = rig.cable();
      rig.start();
      for (int i = 0; i < 2 * scale; i++) {
        kept.send(50);
        TimeUnit.MILLISECONDS.sleep(1500); // the broker saves once a second
        rig.broker.kill();
        cable.send(10);
        rig.becomes("the log says so", () -> rig.logged("to=\"WAITING\"") > 0);
        rig.broker.restart();
        kept.send(50);
        rig.becomes("the link is up again", () -> rig.healthSays("ok", ""));
      }
      rig.see("log: " + rig.line("link=\"broker\" from=\"UP\" to=\"WAITING\""));
      rig.see("the cable goes on meanwhile: each of its readings is on record");
      return rig.judged();
    }
  }
}
