package witnessmark.trial.faults;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The system's clock is stepped back and forth under the running daemon. */
final class ClockSteps implements Fault {
  private static final List<String> STEPS = List.of("-2h", "+3d", "-10m", "+0");
  private static final String CREDITED =
      "SELECT fastener || ' ' || effect || ' ' || json_extract(CAST(bytes AS TEXT), '$.reason')"
          + " FROM trace JOIN entry USING (n) WHERE kind = 'torque' AND wrench = 'TW-0610' ORDER BY n;";

  @Override
  public String title() {
    return "system clock stepped back and forth";
  }

  @Override
  public String promise() {
    return "every reading is on record once, in the order in which it came, with the clock's own time;"
        + " the log verifies; readings are credited to the job under way as without steps";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      Path offset = directory.resolve("offset");
      set(offset, "+0");
      rig.shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
      List<String> faked =
          List.of(
              "env",
              "LD_PRELOAD=" + library(),
              "FAKETIME_TIMESTAMP_FILE=" + offset,
              "FAKETIME_CACHE_DURATION=1",
              "FAKETIME_DONT_FAKE_MONOTONIC=1",
              // with its fix for older C libraries, waits of a JVM never end
              "FAKETIME_FORCE_MONOTONIC_FIX=0");
      rig.shop.enrol("TW-0610", "100 N.m");
      rig.shop.under(faked);
      rig.shop.on(rig.broker);
      rig.start();
      rig.shop.under(List.of());
      Gateway kept = rig.kept(rig.broker.url()).at("bench-9");
      kept.send(10);
      Gateway wrench = rig.kept(rig.broker.url(), "TW-0610");
      tighten(rig, wrench);
      for (String step : STEPS) {
        set(offset, step);
        TimeUnit.MILLISECONDS.sleep(2500); // until it is looked at
        kept.send(10 * scale);
        tighten(rig, wrench);
        rig.see(
            "clock at %s: the newest entry says %s"
                .formatted(
                    step,
                    rig.shop.ledger().run("SELECT at FROM trace ORDER BY n DESC LIMIT 1;").get(0)));
      }
      tighten(rig, wrench);
      rig.see("the job's readings: " + rig.shop.ledger().run(CREDITED));
      rig.becomes("the job is done as without steps", () -> rig.lastDisplay().equals("complete"));
      List<String> numbers =
          rig.shop
              .ledger()
              .run(
                  "SELECT number FROM trace WHERE kind = 'torque' AND wrench = 'TW-0417' ORDER BY n;");
      List<String> ascending =
          numbers.stream()
              .sorted((a, b) -> Integer.compare(Integer.parseInt(a), Integer.parseInt(b)))
              .toList();
      rig.promise("on record in the order in which they came", numbers.equals(ascending));
      return rig.judged();
    }
  }

  /** The next bolt of the job; its torque and angle are as they should be. */
  private static void tighten(Rig rig, Gateway wrench) throws InterruptedException {
    wrench.pull(wrench.sent() < 4 ? "33" : "45");
    rig.becomes(
        "pull " + wrench.sent() + " is on record", () -> rig.onRecord(wrench) == wrench.sent());
  }

  private static void set(Path offset, String step) throws IOException {
    Path fresh = offset.resolveSibling("offset.new");
    Files.writeString(fresh, step + "\n");
    Files.move(fresh, offset, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String library() throws IOException {
    try (Stream<Path> files =
        Files.find(Path.of("/usr/lib"), 4, (p, a) -> p.endsWith("libfaketimeMT.so.1"))) {
      return files
          .findFirst()
          .orElseThrow(
              () ->
                  new IllegalStateException(
                      "libfaketimeMT.so.1 is not there; install the package faketime"))
          .toString();
    }
  }
}
