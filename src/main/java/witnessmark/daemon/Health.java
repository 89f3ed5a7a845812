package witnessmark.daemon;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import witnessmark.link.LinkState;
import witnessmark.link.LinkStatus;
import witnessmark.pipeline.Counts;

/** Says how the bridge is. */
final class Health {
  private final String bridge;
  private final Instant since;
  private final Counts counts;
  private final Supplier<List<LinkStatus>> links;

  Health(String bridge, Instant since, Counts counts, Supplier<List<LinkStatus>> links) {
    this.bridge = bridge;
    this.since = since;
    this.counts = counts;
    this.links = links;
  }

  byte[] message() {
    ObjectNode message = JsonNodeFactory.instance.objectNode();
    message.put("bridge", bridge);
    String trouble = counts.trouble();
    List<LinkStatus> down = links.get().stream().filter(l -> l.state() != LinkState.UP).toList();
    message.put("state", trouble == null && down.isEmpty() ? "ok" : "degraded");
    if (trouble != null) {
      message.put("reason", "Nothing can be recorded: " + trouble);
    } else if (!down.isEmpty()) {
      message.put("reason", down.get(0).name() + ": " + down.get(0).detail());
    }
    message.put("since", since.toString());
    message.put("entries", counts.entries());
    message.put("events", counts.events());
    message.put("repeats", counts.repeats());
    message.put("refused", counts.refused());
    ObjectNode states = message.putObject("links");
    links
        .get()
        .forEach(l -> states.put(l.name(), l.state().name().toLowerCase(java.util.Locale.ROOT)));
    return message.toString().getBytes(StandardCharsets.UTF_8);
  }
}
