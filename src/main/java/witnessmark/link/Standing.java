package witnessmark.link;

import java.time.Instant;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The changing {@link LinkStatus} of one link, logged as it changes. */
public final class Standing {
  private static final Logger logger = LoggerFactory.getLogger(Standing.class);

  private final Supplier<Instant> clock;
  private volatile LinkStatus status;
  private String lastTrouble = "";

  /** Begins as waiting: nothing was started yet. */
  public Standing(String name, Supplier<Instant> clock) {
    this.clock = clock;
    this.status = new LinkStatus(name, LinkState.WAITING, "not started", clock.get());
  }

  public LinkStatus status() {
    return status;
  }

  /** Changes the status. A closed link stays closed. */
  public synchronized void become(LinkState state, String detail) {
    LinkStatus before = status;
    if (before.state() == LinkState.CLOSED) {
      return;
    }
    boolean turned =
        before.state() == LinkState.UP ^ state == LinkState.UP || state == LinkState.CLOSED;
    status = new LinkStatus(before.name(), state, detail, turned ? clock.get() : before.since());
    log(before.state(), status);
  }

  /** A trouble that repeats at every attempt is logged once, until it changes or is over. */
  private void log(LinkState from, LinkStatus now) {
    if (now.state() == LinkState.UP || now.state() == LinkState.CLOSED) {
      lastTrouble = "";
      logger
          .atInfo()
          .addKeyValue("link", now.name())
          .addKeyValue("from", from)
          .addKeyValue("to", now.state())
          .addKeyValue("detail", now.detail())
          .log("link changed");
    } else if (now.state() == LinkState.WAITING && !now.detail().equals(lastTrouble)) {
      lastTrouble = now.detail();
      logger
          .atWarn()
          .addKeyValue("link", now.name())
          .addKeyValue("from", from)
          .addKeyValue("to", now.state())
          .addKeyValue("detail", now.detail())
          .log("link waits");
    }
  }
}
