package witnessmark.pipeline;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import witnessmark.decode.Decoded;
import witnessmark.decode.Malformed;
import witnessmark.decode.Sample;

/**
 * A device's message on its way through.
 *
 * @param station where it came from; empty where the channel names none
 * @param source the link and channel, for the record
 * @param at when the bridge took it
 * @param redelivered whether it may have been delivered before
 * @param length how many bytes it has
 * @param decode reads it; called once, on the writer's thread
 * @param sample its bytes, for the record when this program fails to read it
 * @param sender told what became of it
 */
public record Message(
    Optional<String> station,
    String source,
    Instant at,
    boolean redelivered,
    long length,
    Supplier<List<Decoded>> decode,
    Supplier<Sample> sample,
    Sender sender) {

  List<Arrival> arrivals() {
    List<Decoded> all = decoded();
    boolean stored = all.size() > 1;
    return all.stream().map(d -> new Arrival(station, source, at, redelivered, stored, d)).toList();
  }

  /** A fault of the program itself while reading one message costs that message only. */
  private List<Decoded> decoded() {
    try {
      return decode.get();
    } catch (RuntimeException e) {
      String why = "this program failed to read it: " + e.getClass().getSimpleName();
      return List.of(new Malformed(why, sample.get()));
    }
  }
}
