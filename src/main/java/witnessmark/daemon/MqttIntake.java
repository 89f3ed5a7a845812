package witnessmark.daemon;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Function;
import witnessmark.config.MqttConfig;
import witnessmark.decode.Decoded;
import witnessmark.decode.Malformed;
import witnessmark.decode.Messages;
import witnessmark.decode.ProfileDecoder;
import witnessmark.decode.Sample;
import witnessmark.desk.StationName;
import witnessmark.link.Delivery;
import witnessmark.link.Inbox;
import witnessmark.pipeline.Loop;
import witnessmark.pipeline.Message;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Sender;

/**
 * Brings a broker's messages to the writer: the topic says from which station and how to read them.
 */
final class MqttIntake implements Inbox {
  private static final String OURS = "witnessmark/v1/";

  private static final String NAMELESS =
      "the topic names no station; a station's name is 1 to 64 letters, digits, and . _ -";

  /** A broker goes on sending for a station that was taken out of the configuration. */
  private static final String UNSERVED =
      "the station is not among the stations of this link; add it, or give the link a new client-id";

  /**
   * Enough for a disk that works to make room; far below the link's keep-alive, which cannot be
   * answered meanwhile.
   */
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  /**
   * Bytes of payloads that may wait for the disk, beyond one; a queue of so many messages says
   * nothing about their size.
   */
  static final long BUDGET = 32 << 20;

  /** Who published it is told by the acknowledgement, or its absence, alone. */
  private record Publishing(Delivery delivery, Runnable settled) implements Sender {
    @Override
    public boolean keeps() {
      return delivery.kept();
    }

    @Override
    public void recorded(List<Outcome> outcomes) {
      delivery.acknowledge().run();
      settled.run();
    }

    @Override
    public void waits() {
      // not acknowledged
    }

    @Override
    public void lost() {
      settled.run(); // nobody waits for an answer to what was published at most once
    }
  }

  private record Route(String station, Function<byte[], List<Decoded>> decoder) {}

  private final Loop loop;
  private final MqttConfig config;
  private final Neighbours neighbours;
  private final AtomicLong waiting = new AtomicLong();
  private final Map<String, Route> mapped = new HashMap<>();

  MqttIntake(Loop loop, MqttConfig config, Neighbours neighbours) {
    this.loop = loop;
    this.config = config;
    this.neighbours = neighbours;
    for (MqttConfig.Mapped m : config.mapped()) {
      ProfileDecoder decoder = new ProfileDecoder(m.profile());
      this.mapped.put(m.topic(), new Route(m.station(), decoder::decode));
    }
  }

  @Override
  public boolean offer(Delivery delivery) {
    if (neighbours.heard(delivery.channel(), delivery.bytes(), delivery.redelivered())) {
      delivery.acknowledge().run();
      return true;
    }
    int length = delivery.bytes().length;
    if (!room(length)) {
      return false;
    }
    Optional<Route> route = route(delivery.channel());
    Optional<Sample> cut = delivery.cut().map(c -> new Sample(c.head(), c.length(), c.sha256()));
    waiting.addAndGet(length);
    AtomicBoolean counted = new AtomicBoolean(true);
    boolean taken =
        loop.offer(
            new Message(
                route.map(Route::station),
                "mqtt:" + delivery.link() + ":" + ShownTopic.of(delivery.channel()),
                delivery.at(),
                delivery.redelivered(),
                length,
                () -> decoded(route, cut, delivery),
                () -> cut.orElseGet(() -> Sample.of(delivery.bytes())),
                new Publishing(delivery, () -> settled(counted, length))),
            PATIENCE);
    if (!taken) {
      settled(counted, length);
    }
    return taken;
  }

  private void settled(AtomicBoolean counted, int length) {
    if (counted.getAndSet(false)) {
      waiting.addAndGet(-length);
    }
  }

  /** Whether there is room for so many bytes, now or within the patience that there is. */
  private boolean room(int length) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (waiting.get() > 0 && waiting.get() + length > BUDGET) {
      if (System.nanoTime() > end) {
        return false;
      }
      LockSupport.parkNanos(5_000_000);
    }
    return true;
  }

  private static List<Decoded> decoded(
      Optional<Route> route, Optional<Sample> cut, Delivery delivery) {
    if (route.isPresent() && cut.isPresent()) {
      return List.of(Messages.tooLarge(cut.get()));
    }
    return route
        .map(r -> r.decoder().apply(delivery.bytes()))
        .orElseGet(
            () ->
                List.of(new Malformed(NAMELESS, cut.orElseGet(() -> Sample.of(delivery.bytes())))));
  }

  @Override
  public boolean hasRoom() {
    return loop.hasRoom() && waiting.get() <= BUDGET / 2;
  }

  private Optional<Route> route(String topic) {
    if (mapped.containsKey(topic)) {
      return Optional.of(mapped.get(topic));
    }
    String[] levels = topic.startsWith(OURS) ? topic.substring(OURS.length()).split("/", -1) : null;
    if (levels == null || levels.length != 2 || !StationName.fits(levels[0])) {
      return Optional.empty();
    }
    if (!config.serves(levels[0])) {
      return Optional.of(new Route(levels[0], bytes -> malformed(UNSERVED, bytes)));
    }
    return switch (levels[1]) {
      case "torque" -> Optional.of(new Route(levels[0], Messages::torque));
      case "scan" -> Optional.of(new Route(levels[0], Messages::scan));
      default -> Optional.empty();
    };
  }

  private static List<Decoded> malformed(String reason, byte[] bytes) {
    return List.of(new Malformed(reason, Sample.of(bytes)));
  }
}
