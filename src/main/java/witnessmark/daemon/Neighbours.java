package witnessmark.daemon;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.desk.StationName;

/**
 * The other bridges at a broker, as their retained health tells. Each would record every reading
 * and tell every station its own verdict, so a bridge that serves all stations is to be alone.
 *
 * <p>One of the same name tells its health in the same place, so that nobody sees how either is. It
 * is told apart by when it started. What the broker retained from before may be an earlier run's of
 * this very bridge, so only what is told now counts.
 */
final class Neighbours {
  private static final Logger LOG = LoggerFactory.getLogger(Neighbours.class);
  private static final Pattern TOPIC = Pattern.compile("witnessmark/v1/([^/]*)/health");
  private static final Set<String> THERE = Set.of("ok", "degraded");
  private static final int MOST = 100;

  /** A bridge's health is of some hundred bytes and as many for each link. */
  private static final int LONGEST = 64 << 10;

  /** Twice the longest time between two health messages. */
  private static final long FORGOTTEN = TimeUnit.HOURS.toNanos(2);

  private final String bridge;
  private final String since;
  private final String link;
  private final LongSupplier nanos;
  private final Set<String> there = new ConcurrentSkipListSet<>();

  /** When the other bridge of this name was last heard of; empty while there is none. */
  private volatile OptionalLong namesake = OptionalLong.empty();

  /**
   * @param bridge the own bridge's name
   * @param since when the own bridge started, as its health says it
   */
  Neighbours(String bridge, String since, String link) {
    this(bridge, since, link, System::nanoTime);
  }

  Neighbours(String bridge, String since, String link, LongSupplier nanos) {
    this.bridge = bridge;
    this.since = since;
    this.link = link;
    this.nanos = nanos;
  }

  /**
   * Takes the message if it is some bridge's health; false when it is something else.
   *
   * @param retained whether it may be from before
   */
  boolean heard(String topic, byte[] payload, boolean retained) {
    Matcher matcher = TOPIC.matcher(topic);
    if (!matcher.matches()) {
      return false;
    }
    String name = matcher.group(1);
    JsonNode health = read(payload);
    boolean alive = THERE.contains(health.path("state").asText());
    if (name.equals(bridge)) {
      namesake(alive, health.path("since").asText(), retained);
    } else if (StationName.fits(name)) {
      note(name, alive);
    }
    return true;
  }

  private void namesake(boolean alive, String started, boolean retained) {
    if (alive && !retained && !started.isEmpty() && !started.equals(since)) {
      if (namesake.isEmpty()) {
        LOG.atWarn()
            .addKeyValue("link", link)
            .addKeyValue("since", started)
            .addKeyValue("detail", sameName())
            .log("not alone");
      }
      namesake = OptionalLong.of(nanos.getAsLong());
    } else if (!alive && namesake.isPresent()) {
      namesake = OptionalLong.empty();
      LOG.atInfo().addKeyValue("link", link).addKeyValue("gone", bridge).log("neighbour gone");
    }
  }

  private void note(String name, boolean alive) {
    if (alive && there.size() < MOST && there.add(name)) {
      LOG.atWarn().addKeyValue("link", link).addKeyValue("detail", sentence(name)).log("not alone");
    } else if (!alive && there.remove(name)) {
      LOG.atInfo().addKeyValue("link", link).addKeyValue("gone", name).log("neighbour gone");
    }
  }

  /** What to say while there is another. */
  Optional<String> warning() {
    OptionalLong heard = namesake;
    if (heard.isPresent() && nanos.getAsLong() - heard.getAsLong() < FORGOTTEN) {
      return Optional.of(link + ": " + sameName());
    }
    return there.stream().findFirst().map(name -> link + ": " + sentence(name));
  }

  private String sameName() {
    return "another bridge of the name \""
        + bridge
        + "\" tells its health here, too; give each its own name in [bridge]";
  }

  private static String sentence(String name) {
    return "bridge \""
        + name
        + "\" answers for the same stations; stop one of the two, or give each its own stations";
  }

  private static JsonNode read(byte[] payload) {
    if (payload.length > LONGEST) {
      return MissingNode.getInstance();
    }
    try {
      JsonNode health = new ObjectMapper().readTree(payload);
      return health == null ? MissingNode.getInstance() : health;
    } catch (IOException e) {
      return MissingNode.getInstance(); // nobody's health
    }
  }
}
