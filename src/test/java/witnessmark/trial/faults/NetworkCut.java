package witnessmark.trial.faults;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** The network between daemon and broker resets, delays and stalls. */
final class NetworkCut implements Fault {
  private static final long STALL_SECONDS = 35;

  @Override
  public String title() {
    return "network between daemon and broker reset, slow, stalled";
  }

  @Override
  public String promise() {
    return "a dead connection is noticed within 35 s and made anew; everything is on"
        + " record once, every verdict told";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      Wire wire = rig.closing(new Wire(rig.broker.port()));
      rig.shop.on(wire.url());
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      for (int i = 0; i < 3 * scale; i++) {
        kept.send(30);
        wire.reset();
        kept.send(30);
        TimeUnit.MILLISECONDS.sleep(700);
      }
      rig.becomes("up again after resets", rig::allThere);
      rig.see("reset: " + rig.line("to=\"WAITING\""));
      wire.delay(100);
      kept.send(30 * scale);
      rig.becomes("recorded over a slow network", rig::allThere);
      wire.delay(0);
      long before = rig.logged("to=\"WAITING\"");
      wire.stall(true);
      kept.send(30 * scale);
      long began = System.nanoTime();
      rig.becomes("a stall is noticed", () -> rig.logged("to=\"WAITING\"") > before);
      long noticed = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - began);
      rig.promise("within " + STALL_SECONDS + " s, not " + noticed, noticed <= STALL_SECONDS);
      rig.see("a stall was noticed after %d s".formatted(noticed));
      wire.stall(false);
      return rig.judged();
    }
  }
}
