package witnessmark.daemon;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.config.BridgeConfig;
import witnessmark.config.HttpConfig;
import witnessmark.config.MqttConfig;
import witnessmark.config.SerialConfig;
import witnessmark.entry.Moments;
import witnessmark.http.Observed;
import witnessmark.http.Page;
import witnessmark.http.Recorded;
import witnessmark.ledger.DirectoryLock;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Modes;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.link.LinkStatus;
import witnessmark.link.mqtt.MqttLink;
import witnessmark.link.serial.PluggedPorts;
import witnessmark.link.serial.SerialLink;
import witnessmark.pipeline.Counts;
import witnessmark.pipeline.Loop;
import witnessmark.pipeline.Watch;
import witnessmark.publish.Publisher;

/** The daemon: links that listen, the one writer, and publishers that follow the log. */
public final class Bridge implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Bridge.class);

  private final DirectoryLock lock;
  private final SigningKey key;
  private final Disk disk;
  private final Loop loop;
  private final Health health;

  /** Stations that the configuration names. */
  private final Set<String> served;

  private final List<Neighbours> neighbours = new ArrayList<>();
  private final List<MqttLink> brokers = new ArrayList<>();
  private final List<SerialLink> ports = new ArrayList<>();
  private final List<Publisher> publishers = new ArrayList<>();
  private final Optional<CheckpointDrop> drop;
  private final Optional<Page> page;
  private final Optional<String> exposed;
  private final boolean beside;
  private boolean started;

  /** Builds everything; nothing is opened yet but the lock on the data directory. */
  public Bridge(BridgeConfig config, LedgerFiles files) {
    lock = DirectoryLock.take(files);
    key = new SigningKey(files);
    disk = new Disk(files, config.keepFree());
    Stream<Path> secrets = config.brokers().stream().flatMap(b -> b.secrets().stream());
    exposed = files.exposed().or(() -> secrets.flatMap(s -> Modes.open(s).stream()).findFirst());
    beside = config.checkpoints().within(files.directory());
    served = served(config);
    Optional<Recorded> counting = config.http().map(h -> new Recorded());
    loop =
        new Loop(
            config.queue(),
            key::open,
            disk::doubtful,
            this::news,
            counting.map(Watch.class::cast).orElse(Watch.NONE));
    Instant since = Moments.now();
    health = new Health(config.name(), since, loop.counts(), this::links, this::warning);
    for (MqttConfig c : config.brokers()) {
      Neighbours others = new Neighbours(config.name(), since.toString(), c.settings().name());
      neighbours.add(others);
      MqttLink link = new MqttLink(c.settings(), new MqttIntake(loop, c, others), Moments::now);
      brokers.add(link);
      if (c.publish()) {
        publishers.add(
            new Publisher(
                config.name(),
                c.settings().name(),
                link,
                c::serves,
                this::stations,
                () -> SqliteReading.open(files),
                health::now,
                config.healthEvery(),
                config.checkpoints().publishEvery()));
      }
    }
    drop =
        config
            .checkpoints()
            .drop()
            .map(
                d ->
                    new CheckpointDrop(
                        d, config.checkpoints().every(), () -> SqliteReading.open(files)));
    for (SerialConfig c : config.ports()) {
      AtomicReference<SerialLink> port = new AtomicReference<>();
      SerialIntake intake = new SerialIntake(loop, c, bytes -> port.get().send(bytes));
      port.set(new SerialLink(c.settings(), new PluggedPorts(), intake, Moments::now));
      ports.add(port.get());
    }
    List<String> told =
        config.brokers().stream()
            .filter(MqttConfig::publish)
            .map(c -> c.settings().name())
            .toList();
    page = config.http().map(h -> page(h, health, files, told, counting.orElseThrow()));
  }

  private Page page(
      HttpConfig http, Health health, LedgerFiles files, List<String> told, Recorded counting) {
    Observed observed =
        new Observed(
            health::now,
            loop.counts(),
            loop::fill,
            this::links,
            told,
            files,
            () -> SqliteReading.open(files));
    return new Page(http.host(), http.port(), observed, counting);
  }

  /**
   * Opens the log and begins to listen.
   *
   * @throws witnessmark.ledger.LedgerException when the log cannot be used
   */
  public void start() {
    if (beside) {
      LOG.atWarn().log("checkpoints are dropped into the data directory, where they prove nothing");
    }
    exposed.ifPresent(e -> LOG.atWarn().addKeyValue("detail", e).log("open to others"));
    loop.start();
    started = true;
    publishers.forEach(Publisher::start);
    drop.ifPresent(CheckpointDrop::start);
    brokers.forEach(MqttLink::start);
    ports.forEach(SerialLink::start);
    page.ifPresent(Page::start);
    LOG.atInfo().addKeyValue("entries", loop.counts().entries()).log("listening");
  }

  /** How the links stand. */
  public List<LinkStatus> links() {
    List<LinkStatus> all = new ArrayList<>();
    brokers.forEach(l -> all.add(l.status()));
    ports.forEach(l -> all.add(l.status()));
    return all;
  }

  private Optional<String> warning() {
    return Stream.of(
            disk.warning().stream(),
            publishers.stream().flatMap(p -> p.trouble().stream()),
            neighbours.stream().flatMap(n -> n.warning().stream()),
            drop.flatMap(CheckpointDrop::warning).stream(),
            page.flatMap(Page::trouble).stream(),
            exposed.stream())
        .flatMap(all -> all)
        .findFirst();
  }

  /** What the writer has counted. */
  public Counts counts() {
    return loop.counts();
  }

  /** How it is, in one line for the person who looks after it. */
  public String standing() {
    return loop.counts().entries() + " entries; " + health.now().key();
  }

  /** How often the writer has come round. */
  public long turns() {
    return loop.turns();
  }

  private static Set<String> served(BridgeConfig config) {
    Set<String> stations = new TreeSet<>();
    for (MqttConfig c : config.brokers()) {
      stations.addAll(c.stations());
      c.mapped().forEach(m -> stations.add(m.station()));
    }
    config.ports().forEach(p -> stations.add(p.station()));
    return stations;
  }

  private Set<String> stations() {
    Set<String> all = new TreeSet<>(served);
    all.addAll(loop.stations());
    return all;
  }

  private void news() {
    key.look();
    publishers.forEach(Publisher::wake);
  }

  /** Stops listening, records what is queued, tells what is recorded, and lets go. */
  @Override
  public void close() {
    if (!started) { // why is the caller's to tell
      loop.close();
      lock.close();
      return;
    }
    page.ifPresent(Page::close);
    ports.forEach(SerialLink::close);
    loop.close();
    publishers.forEach(Publisher::close);
    drop.ifPresent(CheckpointDrop::close);
    brokers.forEach(MqttLink::close);
    lock.close();
    LOG.atInfo().addKeyValue("entries", loop.counts().entries()).log("stopped");
  }
}
