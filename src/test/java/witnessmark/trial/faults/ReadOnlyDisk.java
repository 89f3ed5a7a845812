package witnessmark.trial.faults;

import java.nio.file.Path;
import witnessmark.bench.DaemonProcess;

/** The daemon is started on a disk that is read-only, and again when it can be written. */
final class ReadOnlyDisk implements Fault {
  @Override
  public String title() {
    return "disk read-only at the start";
  }

  @Override
  public String promise() {
    return "the daemon refuses to start with status 4 and says why; what came meanwhile waits at the"
        + " broker and is recorded once it runs";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      SmallDisk disk = rig.closing(new SmallDisk(rig.shop.data(), 20_000));
      rig.shop.under(disk.prefix()).bridge("keep-free = \"1 MB\"").on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(5);
      rig.becomes("recorded before", rig::allThere);
      rig.daemon.stop();
      rig.promise("the disk can be set read-only", disk.mount("ro") == 0);
      kept.send(10 * scale);
      DaemonProcess refused = rig.shop.daemon();
      int status = refused.status();
      rig.promise("exit status 4, not " + status, status == 4);
      rig.see("exit status %d: %s".formatted(status, refused.log().strip()));
      rig.promise("it is writable again", disk.mount("rw") == 0);
      rig.start();
      return rig.judged();
    }
  }
}
