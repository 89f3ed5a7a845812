package witnessmark.trial.faults;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** The disk is full while readings come from all kinds of senders, and has room again. */
final class FullDisk implements Fault {
  private static final int ROOM = 64;

  @Override
  public String title() {
    return "disk full, then free again";
  }

  @Override
  public String promise() {
    return "said at once everywhere; no acknowledgement; what senders keep is recorded once; of the rest "
        + ROOM
        + " (queue) are kept, the others counted and stated";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      SmallDisk disk = rig.closing(new SmallDisk(rig.shop.data(), 6000));
      rig.shop.under(disk.prefix()).bridge("queue = " + ROOM).bridge("keep-free = \"1 MB\"");
      rig.shop.on(rig.broker);
      Cable cable = rig.cable();
      Gateway kept = rig.kept(rig.broker.url());
      Gateway loose = rig.loose();
      rig.start();
      kept.send(20);
      cable.send(5);
      loose.send(5);
      rig.becomes("recorded before", () -> rig.allThere());
      cable.answers(Duration.ofMillis(300));
      long acknowledged = rig.acknowledged();
      disk.fill();
      long began = System.nanoTime();
      rig.becomes(
          "health says that nothing can be recorded before anything comes",
          () -> rig.healthSays("degraded", "Nothing can be recorded: "));
      rig.see(
          "health %d ms after the disk was full: \"%s\""
              .formatted(
                  TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began),
                  rig.lastHealth().path("reason").asText()));
      rig.becomes("the display says so", () -> rig.lastDisplay().equals("not-recording"));
      int verdicts = rig.verdicts.payloads().size();
      for (int i = 0; i < 10 * scale; i++) {
        kept.send(5);
        cable.send(8);
        loose.send(4);
      }
      long over = cable.sent() + loose.sent() - 10 - ROOM;
      rig.becomes(
          "health counts those not kept: " + over,
          () -> rig.lastHealth().path("notkept").asLong() == over);
      promises(rig, cable, acknowledged, verdicts);
      rig.see(
          "health meanwhile: waiting %d, notkept %d"
              .formatted(
                  rig.lastHealth().path("waiting").asLong(),
                  rig.lastHealth().path("notkept").asLong()));
      disk.free();
      rig.becomes("health is ok again", () -> rig.healthSays("ok", ""));
      rig.becomes("the display goes on", () -> rig.lastDisplay().equals("attest"));
      rig.see("log: " + rig.line("recording again"));
      Row row = rig.judged();
      rig.promise("stated " + over, row.figures().stated() == over);
      rig.promise("one line when it is over", rig.logged("recording again") == 1);
      return rig.judged();
    }
  }

  private static void promises(Rig rig, Cable cable, long acknowledged, int verdicts) {
    String answers = cable.answers(Duration.ofMillis(500));
    rig.promise("every frame is answered, none accepted", !answers.contains("A|"));
    long refusals = answers.split("refused", -1).length - 1L;
    rig.promise("one answer a frame: " + refusals, refusals == cable.sent() - 5);
    rig.promise("nothing is acknowledged meanwhile", rig.acknowledged() == acknowledged);
    rig.promise("no verdict meanwhile", rig.verdicts.payloads().size() == verdicts);
    long lines = rig.logged("Loop: nothing can be recorded");
    rig.promise("one line in the log, not " + lines, lines >= 1 && lines <= 2);
    rig.see(
        "serial line: each frame answered N¦refused; log, %d line(s): %s"
            .formatted(lines, rig.line("Loop: nothing can be recorded")));
  }
}
