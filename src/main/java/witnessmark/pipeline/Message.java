package witnessmark.pipeline;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import witnessmark.decode.Decoded;

/**
 * A device's message on its way through.
 *
 * @param station where it came from; empty where the channel names none
 * @param source the link and channel, for the record
 * @param at when the bridge took it
 * @param redelivered whether the transport says that it may have been delivered before
 * @param decode reads it; called once, on the writer's thread
 * @param recorded called once all of it is on disk, with what came of it
 */
public record Message(
    Optional<String> station,
    String source,
    Instant at,
    boolean redelivered,
    Supplier<List<Decoded>> decode,
    Consumer<List<Outcome>> recorded) {

  List<Arrival> arrivals() {
    return decode.get().stream()
        .map(d -> new Arrival(station, source, at, redelivered, d))
        .toList();
  }
}
