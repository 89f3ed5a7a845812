package witnessmark.doctor;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import witnessmark.entry.Moments;

/** The clock that every entry's time comes from. */
final class Clock {
  static final String AREA = "clock";

  /** Written by systemd-timesyncd once it has the time (systemd-timesyncd.service(8)). */
  private static final Path TIMESYNCD = Path.of("/run/systemd/timesync/synchronized");

  private static final Duration SLACK = Duration.ofSeconds(2);

  private Clock() {}

  /**
   * @param last the newest entry's time, where there is one
   */
  static List<Finding> look(Optional<Instant> last) {
    List<Finding> found = new ArrayList<>(List.of(synchronised()));
    last.ifPresent(l -> found.add(order(l, Moments.now())));
    return found;
  }

  static Finding order(Instant last, Instant now) {
    if (last.isAfter(now.plus(SLACK))) {
      return Finding.bad(
          AREA,
          "The clock stands at "
              + Moments.text(now)
              + ", before the newest entry, which was taken at "
              + Moments.text(last)
              + ".",
          "Set the clock before more is recorded (timedatectl set-ntp true). If it is right, it was"
              + " wrong when that entry was taken: say so in your shop's own records.");
    }
    return Finding.good(
        AREA, "The newest entry was taken before now, at " + Moments.text(last) + ".");
  }

  private static Finding synchronised() {
    if (Files.exists(TIMESYNCD)) {
      return Finding.good(AREA, "It is synchronised by systemd-timesyncd.");
    }
    Optional<String> systemd = said("timedatectl", "show", "--property=NTPSynchronized", "--value");
    if (systemd.isPresent() && systemd.get().equals("yes")) {
      return Finding.good(AREA, "It is synchronised, says timedatectl.");
    }
    Optional<String> chrony = said("chronyc", "-n", "tracking");
    if (chrony.isPresent() && chrony.get().contains("Leap status     : Normal")) {
      return Finding.good(AREA, "It is synchronised by chrony.");
    }
    if (systemd.isPresent() || chrony.isPresent()) {
      return Finding.warn(
          AREA,
          "It is not synchronised, so times in the log may be wrong.",
          "Let it be set: timedatectl set-ntp true (needs systemd-timesyncd or chrony)");
    }
    return Finding.warn(
        AREA,
        "Whether it is synchronised cannot be told here.",
        "Compare it with a clock you trust: date -u");
  }

  /** What a program says; empty where there is none, or it fails. */
  private static Optional<String> said(String... command) {
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      process.getOutputStream().close();
      String out = new String(process.getInputStream().readNBytes(10_000), StandardCharsets.UTF_8);
      boolean ended = process.waitFor(3, TimeUnit.SECONDS);
      process.destroy();
      return ended && process.exitValue() == 0 ? Optional.of(out.strip()) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
