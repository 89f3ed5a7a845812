package witnessmark.systemd;

import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The service manager that started this process and wants to be told how it is. What cannot be told
 * is logged once; it never stops the work.
 */
public final class ServiceManager {
  private static final Logger LOG = LoggerFactory.getLogger(ServiceManager.class);

  private final Libsystemd library;
  private final Optional<Duration> patience;
  private boolean failed;

  private ServiceManager(Libsystemd library, Optional<Duration> patience) {
    this.library = library;
    this.patience = patience;
  }

  /**
   * The manager that the environment names; none where nobody asked to be told, and then nothing is
   * loaded.
   *
   * @param environment the process's variables
   * @param pid the process's number
   */
  public static Optional<ServiceManager> of(Map<String, String> environment, long pid) {
    if (!environment.containsKey("NOTIFY_SOCKET")) {
      return Optional.empty();
    }
    try {
      return Optional.of(new ServiceManager(Libsystemd.load(), patience(environment, pid)));
    } catch (UnsatisfiedLinkError e) {
      LOG.atWarn()
          .addKeyValue("reason", e.getMessage())
          .log(
              "the service manager cannot be told that this is ready:"
                  + " install libsystemd0, or let the unit be of Type=exec without WatchdogSec");
      return Optional.empty();
    }
  }

  /** How long the manager waits for a sign of life, where it wants any from this process. */
  static Optional<Duration> patience(Map<String, String> environment, long pid) {
    String micros = environment.getOrDefault("WATCHDOG_USEC", "");
    String whose = environment.getOrDefault("WATCHDOG_PID", Long.toString(pid));
    return micros.matches("[1-9][0-9]{0,17}") && whose.equals(Long.toString(pid))
        ? Optional.of(Duration.of(Long.parseLong(micros), ChronoUnit.MICROS))
        : Optional.empty();
  }

  /** How long it waits for a sign of life before it ends this process; none: it does not watch. */
  public Optional<Duration> patience() {
    return patience;
  }

  /** Says that the program does its work now. */
  public void ready(String status) {
    tell("READY=1\n" + status(status));
  }

  /** Says how the program is, and that it is alive. */
  public void alive(String status) {
    tell("WATCHDOG=1\n" + status(status));
  }

  /** Says how the program is, and gives no sign of life. */
  public void standing(String status) {
    tell(status(status));
  }

  /** Says that the program is about to end. */
  public void stopping() {
    tell("STOPPING=1\n" + status("Stopping"));
  }

  /** One line, whatever is in it: a line end would begin another assignment. */
  static String status(String text) {
    return "STATUS=" + text.replaceAll("\\p{Cntrl}+", " ").strip() + "\n";
  }

  private void tell(String state) {
    int sent = library.sd_notify(0, state);
    if (sent <= 0 && !failed) {
      failed = true;
      LOG.atWarn().addKeyValue("error", -sent).log("the service manager could not be told");
    }
  }
}
