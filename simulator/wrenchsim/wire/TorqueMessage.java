package wrenchsim.wire;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import wrenchsim.wrench.Reading;

/** A reading as the JSON of {@code witnessmark/v1/STATION/torque}. */
public final class TorqueMessage {
  private TorqueMessage() {}

  /** The payload, UTF-8. */
  public static byte[] encode(Reading reading) {
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
        .toString()
        .getBytes(StandardCharsets.UTF_8);
  }
}
