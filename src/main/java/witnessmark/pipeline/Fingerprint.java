package witnessmark.pipeline;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import witnessmark.torque.Angle;
import witnessmark.torque.TorqueEvent;

/** What makes an event recognisable when it comes again. */
final class Fingerprint {
  private Fingerprint() {}

  /**
   * The first 16 bytes, in hexadecimal, of a SHA-256 over what the wrench itself said: serial
   * number, event number, time, torque, angle and direction.
   */
  static String of(TorqueEvent event) {
    String said =
        String.join(
            "\n",
            event.wrench(),
            event.number().isPresent() ? Long.toString(event.number().getAsLong()) : "",
            event.time().map(Object::toString).orElse(""),
            event.torque().toString(),
            event.angle().map(Angle::toString).orElse(""),
            event.direction().code());
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(said.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(Arrays.copyOf(hash, 16));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
