package witnessmark.daemon;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.desk.StationName;

/**
 * The other bridges at a broker, as their retained health tells. Each would record every reading
 * and tell every station its own verdict, so a bridge that serves all stations is to be alone.
 */
final class Neighbours {
  private static final Logger LOG = LoggerFactory.getLogger(Neighbours.class);
  private static final Pattern TOPIC = Pattern.compile("witnessmark/v1/([^/]*)/health");
  private static final Set<String> THERE = Set.of("ok", "degraded");
  private static final int MOST = 100;

  /** A bridge's health is of some hundred bytes and as many for each link. */
  private static final int LONGEST = 64 << 10;

  private final String bridge;
  private final String link;
  private final Set<String> there = new ConcurrentSkipListSet<>();

  /**
   * @param bridge the own bridge's name
   */
  Neighbours(String bridge, String link) {
    this.bridge = bridge;
    this.link = link;
  }

  /** Takes the message if it is some bridge's health; false when it is something else. */
  boolean heard(String topic, byte[] payload) {
    Matcher matcher = TOPIC.matcher(topic);
    if (!matcher.matches()) {
      return false;
    }
    String name = matcher.group(1);
    if (StationName.fits(name) && !name.equals(bridge)) {
      note(name, THERE.contains(state(payload)));
    }
    return true;
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
    return there.stream().findFirst().map(name -> link + ": " + sentence(name));
  }

  private static String sentence(String name) {
    return "bridge \""
        + name
        + "\" answers for the same stations; stop one of the two, or give each its own stations";
  }

  private static String state(byte[] payload) {
    if (payload.length > LONGEST) {
      return "";
    }
    try {
      JsonNode health = new ObjectMapper().readTree(payload);
      return health == null ? "" : health.path("state").asText();
    } catch (IOException e) {
      return ""; // nobody's health
    }
  }
}
