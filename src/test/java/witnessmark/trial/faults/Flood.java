package witnessmark.trial.faults;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A wrench on a cable floods without a pause, while others work as always. */
final class Flood implements Fault {
  @Override
  public String title() {
    return "a wrench that floods";
  }

  @Override
  public String promise() {
    return "the line is made to wait and loses nothing; the others are recorded and told meanwhile";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Cable cable = rig.cable();
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      int frames = 3000 * scale;
      ByteArrayOutputStream flood = new ByteArrayOutputStream();
      for (int i = 0; i < frames; i++) {
        flood.writeBytes(cable.next());
      }
      Thread flooding = new Thread(() -> cable.pair().write(flood.toByteArray()));
      Thread draining = new Thread(() -> cable.answers(java.time.Duration.ofSeconds(60)));
      draining.setDaemon(true);
      draining.start();
      long began = System.nanoTime();
      flooding.start();
      long slowest = 0;
      for (int i = 0; i < 20 * scale; i++) {
        long one = System.nanoTime();
        kept.send(1);
        long sent = kept.sent();
        rig.becomes("a calm reading is recorded meanwhile", () -> rig.onRecord(kept) == sent);
        slowest = Math.max(slowest, System.nanoTime() - one);
      }
      flooding.join();
      rig.becomes("the flood is on record", () -> rig.onRecord(cable) == frames);
      long seconds = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - began);
      rig.see(
          "%d frames on record within %d s; the slowest of the others' readings was on record (and looked up) within %d ms"
              .formatted(frames, seconds, TimeUnit.NANOSECONDS.toMillis(slowest)));
      return rig.judged();
    }
  }
}
