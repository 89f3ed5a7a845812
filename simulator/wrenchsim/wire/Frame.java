package wrenchsim.wire;

import static java.nio.charset.StandardCharsets.US_ASCII;

import wrenchsim.wrench.Reading;

/** A reading as one frame of the simulator's serial line. */
public final class Frame {
  private static final int MOST_BYTES = 256;

  private Frame() {}

  /**
   * The frame with its CR LF.
   *
   * @throws IllegalArgumentException for a reading without a number, which this line cannot carry
   */
  public static byte[] encode(Reading reading) {
    long number =
        reading
            .event()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "the serial line needs an event number, but wrench "
                            + reading.wrench()
                            + " does not count"));
    String body =
        String.join(
            "|",
            "W",
            reading.wrench(),
            Long.toString(number),
            reading.time().map(WireTime::text).orElse(""),
            reading.torque(),
            reading.unit().symbol(),
            reading.angle().orElse(""),
            reading.tightening() ? "cw" : "ccw");
    byte[] frame =
        (body + "|%04X\r\n".formatted(Crc16.of(body.getBytes(US_ASCII)))).getBytes(US_ASCII);
    if (frame.length > MOST_BYTES) {
      throw new IllegalArgumentException(
          "a frame has at most %d bytes, but this one has %d: %s"
              .formatted(MOST_BYTES, frame.length, body));
    }
    return frame;
  }
}
