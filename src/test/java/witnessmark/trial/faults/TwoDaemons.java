package witnessmark.trial.faults;

import java.nio.file.Path;
import witnessmark.bench.DaemonProcess;

/** A second daemon is started on the same data directory. */
final class TwoDaemons implements Fault {
  @Override
  public String title() {
    return "two daemons on one data directory";
  }

  @Override
  public String promise() {
    return "the second refuses with status 4 and says so; the first goes on";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(10 * scale);
      DaemonProcess second = rig.shop.daemon();
      int status = second.status();
      rig.promise("exit status 4, not " + status, status == 4);
      rig.see("exit status %d: %s".formatted(status, second.log().strip()));
      kept.send(10 * scale);
      rig.promise("the first goes on", !rig.daemon.ended());
      return rig.judged();
    }
  }
}
