package witnessmark.trial.faults;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import witnessmark.bench.PtyPair;

/** The serial cable is pulled in the middle of a line and plugged in again as another device. */
final class CablePulled implements Fault {
  @Override
  public String title() {
    return "serial cable pulled mid-line, replugged as another device";
  }

  @Override
  public String promise() {
    return "health names the cable; the half line is on record as refused; the link opens the new"
        + " device by itself within a second or two, and every whole line is recorded";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Cable cable = rig.cable();
      rig.start();
      for (int i = 1; i <= 2 * scale; i++) {
        int pulls = i;
        cable.send(10);
        rig.becomes("recorded before the pull", () -> rig.onRecord(cable) == 10 * pulls);
        byte[] half = cable.peek();
        String device = cable.pair().bridge().toRealPath().toString();
        cable.pair().write(Arrays.copyOf(half, half.length / 2));
        TimeUnit.MILLISECONDS.sleep(300); // until it is read
        cable.pair().pull();
        rig.becomes("health names it", () -> rig.healthSays("degraded", "line: port "));
        rig.see("health: " + rig.lastHealth().path("reason").asText());
        // another device has the old one's number meanwhile
        PtyPair other = PtyPair.plug(Files.createDirectory(directory.resolve("other" + i)));
        cable.pair().plug();
        rig.closing(other);
        rig.becomes("health is ok again", () -> rig.healthSays("ok", ""));
        String now = cable.pair().bridge().toRealPath().toString();
        rig.see("the device was " + device + " and is " + now);
        rig.promise("it is another device", !device.equals(now));
        rig.becomes("the half line is refused", () -> rig.figures().refused() == pulls);
      }
      cable.send(10);
      return rig.judged();
    }
  }
}
