package witnessmark.trial.faults;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * The system refuses every write of the running daemon, as a failing disk does: its limit on file
 * sizes is set to nothing from outside. A disk cannot be set read-only under open files by hand.
 */
final class RefusingDisk implements Fault {
  @Override
  public String title() {
    return "every write refused by the system, then allowed";
  }

  @Override
  public String promise() {
    return "said at once with the first reading that comes; no acknowledgement; all is recorded once"
        + " when writing works again, without a restart";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Cable cable = rig.cable();
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      kept.send(5);
      cable.send(5);
      rig.becomes("recorded before", rig::allThere);
      long acknowledged = rig.acknowledged();
      limit(rig.daemon.pid(), "0:");
      long began = System.nanoTime();
      cable.send(1);
      rig.becomes("health says it", () -> rig.healthSays("degraded", "Nothing can be recorded: "));
      rig.see(
          "health %d ms after the first reading: \"%s\""
              .formatted(
                  TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began),
                  rig.lastHealth().path("reason").asText()));
      rig.becomes("the display says so", () -> rig.lastDisplay().equals("not-recording"));
      kept.send(10 * scale);
      cable.send(10 * scale);
      TimeUnit.SECONDS.sleep(3);
      rig.promise("nothing is acknowledged meanwhile", rig.acknowledged() == acknowledged);
      long lines = rig.logged("Loop: nothing can be recorded");
      rig.promise("at most three lines in the log, not " + lines, lines <= 3);
      limit(rig.daemon.pid(), "unlimited:");
      rig.becomes("health is ok again", () -> rig.healthSays("ok", ""));
      rig.becomes("the display goes on", () -> rig.lastDisplay().equals("attest"));
      rig.see("log, %d line(s) and then: %s".formatted(lines, rig.line("recording again")));
      return rig.judged();
    }
  }

  private static void limit(long pid, String size) throws Exception {
    Process prlimit =
        new ProcessBuilder("prlimit", "--pid", "" + pid, "--fsize=" + size).inheritIO().start();
    if (prlimit.waitFor() != 0) {
      throw new IllegalStateException("prlimit (package util-linux) cannot limit a process");
    }
  }
}
