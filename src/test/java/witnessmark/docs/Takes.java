package witnessmark.docs;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import witnessmark.decode.Decoded;
import witnessmark.decode.Malformed;
import witnessmark.decode.Messages;

/** One of the topics read: its schemas, and the decoder they describe. */
enum Takes {
  TORQUE("torque-event", "torque-burst", Messages::torque),
  SCAN("scan", "scan-burst", Messages::scan);

  private final String one;
  private final String many;
  private final Function<byte[], List<Decoded>> decoder;

  Takes(String one, String many, Function<byte[], List<Decoded>> decoder) {
    this.one = one;
    this.many = many;
    this.decoder = decoder;
  }

  /** What the schema has against the payload; nothing when it validates. */
  List<String> schema(String payload) {
    return Schemas.faults(Schemas.parse(payload).isArray() ? many : one, payload);
  }

  /** The reasons of all that the decoder refuses of the payload; none when it takes all of it. */
  List<String> decoder(String payload) {
    return decoder.apply(payload.getBytes(StandardCharsets.UTF_8)).stream()
        .filter(Malformed.class::isInstance)
        .map(d -> ((Malformed) d).reason())
        .toList();
  }
}
