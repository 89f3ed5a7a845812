package witnessmark.trial.faults;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.awaitility.Awaitility;
import org.awaitility.core.ConditionTimeoutException;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Subscriber;
import witnessmark.bench.Workshop;

/** A bench at work: a broker, a log with a job open, displays that listen, and senders. */
final class Rig implements AutoCloseable {
  private static final Duration LONG = Duration.ofSeconds(120);
  private static final String SELF = "witnessmark-shop-1-broker";

  final Path directory;
  final Mosquitto broker;
  final Workshop shop;
  final Subscriber verdicts;
  final Subscriber health;
  final Subscriber displays;
  private final List<Hand> hands = new ArrayList<>();
  private final List<AutoCloseable> open = new ArrayList<>();
  private final List<String> seen = new ArrayList<>();
  private final List<String> broken = new ArrayList<>();
  DaemonProcess daemon;

  /** Everything but the daemon, which is started by {@link #start}. */
  Rig(Path directory) {
    this.directory = directory;
    this.broker = Mosquitto.start(directory);
    this.shop = Workshop.furnished(directory);
    shop.open("RAM-210", "ATR-26-0147", "bench-1");
    this.verdicts = Subscriber.to(broker, "verdicts", "witnessmark/v1/+/verdict");
    this.health = Subscriber.to(broker, "health", "witnessmark/v1/shop-1/health");
    this.displays = Subscriber.to(broker, "displays", "witnessmark/v1/bench-1/expect");
  }

  /** A sender with memory. */
  Gateway kept(String url) {
    return kept(url, "TW-0417");
  }

  /** Another sender with memory. */
  Gateway kept(String url, String wrench) {
    return with(new Gateway(url, wrench, 1));
  }

  /** A sender that publishes with QoS 0. */
  Gateway loose() {
    return with(new Gateway(broker.url(), "TW-0502", 0));
  }

  /** A wrench on a cable. */
  Cable cable() {
    Cable cable = with(new Cable(directory, "TW-0901"));
    shop.on(cable.pair(), "bench-2");
    return cable;
  }

  private <T extends Hand> T with(T hand) {
    hands.add(hand);
    open.add(hand);
    return hand;
  }

  /** Something to be closed with it. */
  <T extends AutoCloseable> T closing(T thing) {
    open.add(thing);
    return thing;
  }

  /** Starts the daemon, and waits until its links are up. */
  void start() {
    daemon = shop.daemon();
    daemon.awaitOk(broker, "shop-1");
  }

  /** A promise; one that does not hold is written down with its name. */
  void promise(String what, boolean holds) {
    if (!holds) {
      broken.add(what);
    }
  }

  /** A promise that has a minute to come true. */
  boolean becomes(String what, BooleanSupplier holds) {
    try {
      Awaitility.await()
          .atMost(LONG)
          .pollInterval(Duration.ofMillis(50))
          .until(holds::getAsBoolean);
      return true;
    } catch (ConditionTimeoutException e) {
      broken.add(what);
      return false;
    }
  }

  /** Something that people see. */
  void see(String what) {
    seen.add(
        what.replace(directory.toString(), "…")
            .replaceAll("[0-9]{4}-[0-9]{2}-[0-9T:.-]*Z +(?=[A-Z])", "")
            .replaceAll("127\\.0\\.0\\.1:[0-9]+", "127.0.0.1:…")
            .replace("\n", " ")
            .replace("|", "¦"));
  }

  JsonNode lastHealth() {
    List<JsonNode> all = health.documents();
    return all.isEmpty() ? witnessmark.bench.Json.of("{}") : all.get(all.size() - 1);
  }

  String lastDisplay() {
    List<JsonNode> all = displays.documents();
    return all.isEmpty() ? "" : all.get(all.size() - 1).path("state").asText();
  }

  boolean healthSays(String state, String reason) {
    JsonNode last = lastHealth();
    return last.path("state").asText().equals(state)
        && last.path("reason").asText().contains(reason);
  }

  /** How many lines of the daemon's log hold the text. */
  long logged(String text) {
    return daemon.log().lines().filter(l -> l.contains(text)).count();
  }

  /** The first such line, from its message on. */
  String line(String text) {
    return daemon.log().lines().filter(l -> l.contains(text)).findFirst().orElse("").strip();
  }

  long onRecord(Hand hand) {
    return shop.ledger()
        .number(
            "SELECT count(DISTINCT number) FROM trace WHERE kind = 'torque' AND wrench = '"
                + hand.wrench()
                + "';");
  }

  /** Acknowledgements of the daemon that the broker has noted. */
  long acknowledged() {
    return broker.log().lines().filter(l -> l.contains("Received PUBACK from " + SELF)).count();
  }

  long stated() {
    return shop.ledger()
        .number(
            "SELECT coalesce(sum(json_extract(CAST(e.bytes AS TEXT), '$.messages')), 0)"
                + " FROM entry e JOIN trace t ON t.n = e.n WHERE t.kind = 'not-kept';");
  }

  /**
   * Whether what senders with memory sent, and all that was sent once but what is stated, is there.
   */
  boolean allThere() {
    Figures f = figures();
    return f.lost() == 0
        && f.missing() == f.stated()
        && f.verdicts() >= f.recordedKept() + f.recordedLoose();
  }

  Figures figures() {
    long kept = hands.stream().filter(Hand::keeps).mapToLong(Hand::sent).sum();
    long loose = hands.stream().filter(h -> !h.keeps()).mapToLong(Hand::sent).sum();
    long recordedKept = hands.stream().filter(Hand::keeps).mapToLong(this::onRecord).sum();
    long recordedLoose = hands.stream().filter(h -> !h.keeps()).mapToLong(this::onRecord).sum();
    long rows =
        hands.stream()
            .mapToLong(
                h ->
                    shop.ledger()
                        .number(
                            "SELECT count(*) FROM trace WHERE kind = 'torque' AND wrench = '"
                                + h.wrench()
                                + "';"))
            .sum();
    return new Figures(
        kept,
        loose,
        acknowledged(),
        recordedKept,
        recordedLoose,
        shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'refused';"),
        new LinkedHashSet<>(verdicts.documents().stream().map(d -> d.path("id").asText()).toList())
            .size(),
        rows - recordedKept - recordedLoose,
        stated());
  }

  /** The end of every trial: nothing lost or doubled, every verdict told, the log whole. */
  Row judged() {
    becomes("all that was sent is on record or stated, and told", this::allThere);
    Figures figures = figures();
    promise("nothing is lost that its sender kept", figures.lost() == 0);
    promise("nothing is recorded twice", figures.doubled() == 0);
    promise("what was not kept is stated exactly", figures.missing() == figures.stated());
    String verified = shop.attempt("ledger", "verify").out();
    promise("ledger verify: " + verified.strip(), verified.startsWith("Verified: "));
    return new Row(figures, seen, broken);
  }

  @Override
  public void close() {
    if (daemon != null) {
      daemon.close();
    }
    for (AutoCloseable thing : open) {
      try {
        thing.close();
      } catch (Exception e) { // as it declares; the others are closed all the same
        System.err.println("not closed: " + e);
      }
    }
    verdicts.close();
    health.close();
    displays.close();
    broker.close();
  }
}
