package wrenchsim.wire;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import wrenchsim.wrench.Reading;

/** A reading as the JSON of {@code witnessmark/v1/STATION/torque}. */
public final class TorqueMessage {
  private TorqueMessage() {}

  /** The payload, UTF-8. */
  public static byte[] encode(Reading reading) {
    return json(reading).getBytes(StandardCharsets.UTF_8);
  }

  /** The payload of a stored burst, UTF-8: an array, however many there are. */
  public static byte[] encode(List<Reading> burst) {
    return burst.stream()
        .map(TorqueMessage::json)
        .collect(Collectors.joining(",", "[", "]"))
        .getBytes(StandardCharsets.UTF_8);
  }

  private static String json(Reading reading) {
    return new JsonLine()
        .put("wrench", reading.wrench())
        .putNumber("event", reading.event())
        .putText("time", reading.time().map(WireTime::text))
        .put("torque", reading.torque())
        .put("unit", reading.unit().symbol())
        .putText("angle", reading.angle())
        .putText("direction", Optional.of(reading.tightening() ? "cw" : "ccw"))
        .putText("fastener", reading.fastener())
        .putText("operator", reading.operator())
        .toString();
  }
}
