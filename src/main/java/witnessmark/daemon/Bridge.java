package witnessmark.daemon;

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
import witnessmark.config.MqttConfig;
import witnessmark.config.SerialConfig;
import witnessmark.entry.Moments;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.link.LinkStatus;
import witnessmark.link.mqtt.MqttLink;
import witnessmark.link.serial.PluggedPorts;
import witnessmark.link.serial.SerialLink;
import witnessmark.pipeline.Counts;
import witnessmark.pipeline.Loop;
import witnessmark.publish.Publisher;

/** The daemon: links that listen, the one writer, and publishers that follow the log. */
public final class Bridge implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Bridge.class);

  private final DirectoryLock lock;
  private final Disk disk;
  private final Loop loop;

  /** Stations that the configuration names. */
  private final Set<String> served;

  private final List<Neighbours> neighbours = new ArrayList<>();
  private final List<MqttLink> brokers = new ArrayList<>();
  private final List<SerialLink> ports = new ArrayList<>();
  private final List<Publisher> publishers = new ArrayList<>();

  /** Builds everything; nothing is opened yet but the lock on the data directory. */
  public Bridge(BridgeConfig config, LedgerFiles files) {
    lock = DirectoryLock.take(files);
    disk = new Disk(files, config.keepFree());
    loop = new Loop(config.queue(), () -> SqliteLedger.open(files), disk::doubtful, this::news);
    served = served(config);
    Health health =
        new Health(config.name(), Moments.now(), loop.counts(), this::links, this::warning);
    for (MqttConfig c : config.brokers()) {
      Neighbours others = new Neighbours(config.name(), c.settings().name());
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
                config.healthEvery()));
      }
    }
    for (SerialConfig c : config.ports()) {
      AtomicReference<SerialLink> port = new AtomicReference<>();
      SerialIntake intake = new SerialIntake(loop, c, bytes -> port.get().send(bytes));
      port.set(new SerialLink(c.settings(), new PluggedPorts(), intake, Moments::now));
      ports.add(port.get());
    }
  }

  /**
   * Opens the log and begins to listen.
   *
   * @throws witnessmark.ledger.LedgerException when the log cannot be used
   */
  public void start() {
    loop.start();
    publishers.forEach(Publisher::start);
    brokers.forEach(MqttLink::start);
    ports.forEach(SerialLink::start);
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
            neighbours.stream().flatMap(n -> n.warning().stream()))
        .flatMap(all -> all)
        .findFirst();
  }

  /** What the writer has counted. */
  public Counts counts() {
    return loop.counts();
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
    publishers.forEach(Publisher::wake);
  }

  /** Stops listening, records what is queued, tells what is recorded, and lets go. */
  @Override
  public void close() {
    ports.forEach(SerialLink::close);
    loop.close();
    publishers.forEach(Publisher::close);
    brokers.forEach(MqttLink::close);
    lock.close();
    LOG.atInfo().addKeyValue("entries", loop.counts().entries()).log("stopped");
  }
}
