package wrenchsim;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A bridge played by hand: fasteners in strict order, 29.7 to 36.3 N·m, at least 5 degrees unless
 * it is told otherwise. It takes torque messages and answers with the documents' JSON.
 */
public class PaperBridge {
  private final ObjectMapper mapper = new ObjectMapper();
  private final List<String> fasteners;
  private final Set<String> seen = new HashSet<>();
  private final List<String> effects = new ArrayList<>();
  private final Map<String, String> onlyWrench = new HashMap<>();
  private int done;
  private boolean anyOrder;
  private double leastAngle = 5;
  private String job = "J-12";
  private String unit = "ATR-26-0147";
  private boolean nonconforming;
  private int repeats;

  public PaperBridge(String... fasteners) {
    this.fasteners = List.of(fasteners);
  }

  /** Allows one wrench only on a fastener. */
  public PaperBridge only(String fastener, String wrench) {
    onlyWrench.put(fastener, wrench);
    return this;
  }

  /** Takes what turned less for a second hit. */
  public PaperBridge leastAngle(double degrees) {
    leastAngle = degrees;
    return this;
  }

  /** Lists every fastener that is not done yet; which one a reading was on is only counted. */
  public PaperBridge anyOrder() {
    anyOrder = true;
    return this;
  }

  /** Takes a message, which may be a stored burst; the verdicts on what is no repeat. */
  public List<byte[]> takeAll(byte[] message) throws IOException {
    JsonNode root = mapper.readTree(message);
    List<byte[]> verdicts = new ArrayList<>();
    for (JsonNode event : root.isArray() ? root : List.of(root)) {
      take(event).ifPresent(verdicts::add);
    }
    return verdicts;
  }

  /** Takes one message; the verdict, or empty for a repeat. */
  public Optional<byte[]> take(byte[] message) throws IOException {
    return take(mapper.readTree(message));
  }

  private Optional<byte[]> take(JsonNode event) {
    if (event.has("event")
        && !seen.add(event.get("wrench").asText() + " " + event.path("event").asText())) {
      repeats++;
      return Optional.empty();
    }
    double torque = Double.parseDouble(event.get("torque").asText());
    double angle = event.has("angle") ? Double.parseDouble(event.get("angle").asText()) : 99;
    String verdict = torque < 29.7 ? "under-torque" : torque > 36.3 ? "over-torque" : "in-band";
    String due = isComplete() ? "" : ",\"fastener\":\"" + fasteners.get(done) + "\"";
    String effect = effect(event, verdict, angle);
    effects.add(effect);
    if (effect.equals("rechecked")) {
      // Only the peak at which it broke away, which says nothing against the fastener.
      verdict = "in-band";
    }
    return Optional.of(
        """
        {"specversion":"1.0","id":"%d","source":"witnessmark:paper","type":"witnessmark.verdict.v1",
         "data":{"entry":%d,"wrench":"%s","event":%s,"torque":"%s","verdict":"%s","effect":"%s"%s}}
        """
            .formatted(
                effects.size(),
                effects.size(),
                event.get("wrench").asText(),
                event.has("event") ? event.get("event") : null,
                event.get("torque").asText(),
                verdict,
                effect,
                effect.equals("credited") ? due : "")
            .getBytes(StandardCharsets.UTF_8));
  }

  private String effect(JsonNode event, String verdict, double angle) {
    if (event.get("direction").asText().equals("ccw")) {
      if (!nonconforming) {
        done = Math.max(0, done - 1);
      }
      nonconforming = false;
      return "loosened";
    }
    if (verdict.equals("under-torque")) {
      return "again";
    }
    if (angle < leastAngle) {
      return "rechecked";
    }
    if (verdict.equals("over-torque")) {
      nonconforming = true;
      return "nonconforming";
    }
    done++;
    return "credited";
  }

  /** Whether a person has to decide about a fastener; {@link #expect} says so once. */
  public boolean isNonconforming() {
    return nonconforming;
  }

  /** What the station expects; {@code disposed} says whether a person has decided for rework. */
  public byte[] expect(boolean disposed) {
    if (done == fasteners.size()) {
      return "{\"station\":\"bench-1\",\"state\":\"idle\"}".getBytes(StandardCharsets.UTF_8);
    }
    String head =
        "{\"station\":\"bench-1\",\"job\":\"%s\",\"unit\":\"%s\",\"procedure\":\"RAM-210\",\"revision\":\"C\",\"done\":%d"
            .formatted(job, unit, done);
    String state = nonconforming && !disposed ? "dispose" : "tighten";
    String list =
        !state.equals("tighten")
            ? ""
            : fasteners.subList(done, anyOrder ? fasteners.size() : done + 1).stream()
                .map(this::due)
                .collect(Collectors.joining(","));
    return (head + ",\"state\":\"" + state + "\",\"expect\":[" + list + "]}")
        .getBytes(StandardCharsets.UTF_8);
  }

  private String due(String fastener) {
    return """
           {"step":"s","fastener":"%s","pass":"final","target":"33","low":"29.7","high":"36.3","unit":"N.m","anglelow":"10","anglehigh":"60"%s}"""
        .formatted(fastener, wrenches(fastener));
  }

  private String wrenches(String fastener) {
    String only = onlyWrench.get(fastener);
    return only == null ? "" : ",\"wrenches\":[\"" + only + "\"]";
  }

  /** Begins the next job, on another unit. */
  public void next(int number) {
    job = "J-" + number;
    unit = "ATR-26-" + number;
    done = 0;
  }

  /** The unit at hand. */
  public String unit() {
    return unit;
  }

  /** The effects of all readings so far. */
  public List<String> effects() {
    return List.copyOf(effects);
  }

  /** How many messages came again. */
  public int repeats() {
    return repeats;
  }

  public boolean isComplete() {
    return done == fasteners.size();
  }
}
