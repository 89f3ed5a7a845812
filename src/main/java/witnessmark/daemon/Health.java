package witnessmark.daemon;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.link.LinkState;
import witnessmark.link.LinkStatus;
import witnessmark.pipeline.Counts;
import witnessmark.publish.HealthNow;

/** Says how the bridge is. */
final class Health {
  private final String bridge;
  private final Instant since;
  private final Counts counts;
  private final Supplier<List<LinkStatus>> links;
  private final Supplier<Optional<String>> warning;

  /**
   * @param warning what is in the way although every link is up
   */
  Health(
      String bridge,
      Instant since,
      Counts counts,
      Supplier<List<LinkStatus>> links,
      Supplier<Optional<String>> warning) {
    this.bridge = bridge;
    this.since = since;
    this.counts = counts;
    this.links = links;
    this.warning = warning;
  }

  HealthNow now() {
    ObjectNode message = JsonNodeFactory.instance.objectNode();
    message.put("bridge", bridge);
    Optional<String> trouble = Optional.ofNullable(counts.trouble());
    Optional<String> reason = reason(trouble);
    message.put("state", reason.isEmpty() ? "ok" : "degraded");
    reason.ifPresent(r -> message.put("reason", r));
    message.put("since", since.toString());
    message.put("entries", counts.entries());
    message.put("events", counts.events());
    message.put("repeats", counts.repeats());
    message.put("refused", counts.refused());
    message.put("waiting", counts.waiting());
    message.put("notkept", counts.notKept());
    ObjectNode states = message.putObject("links");
    links.get().forEach(l -> states.put(l.name(), l.state().name().toLowerCase(Locale.ROOT)));
    byte[] bytes = message.toString().getBytes(StandardCharsets.UTF_8);
    return new HealthNow(reason.orElse("ok"), trouble, bytes);
  }

  private Optional<String> reason(Optional<String> trouble) {
    if (trouble.isPresent()) {
      return Optional.of("Nothing can be recorded: " + trouble.get());
    }
    String all =
        Stream.concat(
                links.get().stream()
                    .filter(l -> l.state() != LinkState.UP)
                    .map(l -> l.name() + ": " + l.detail()),
                warning.get().stream())
            .collect(Collectors.joining("; "));
    return Optional.of(all).filter(r -> !r.isEmpty());
  }
}
