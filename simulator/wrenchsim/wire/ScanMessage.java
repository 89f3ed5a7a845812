package wrenchsim.wire;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** A scanned label as the JSON of {@code witnessmark/v1/STATION/scan}. */
public final class ScanMessage {
  private ScanMessage() {}

  /** The payload, UTF-8. */
  public static byte[] encode(String scan, Optional<String> operator) {
    return new JsonLine()
        .put("scan", scan)
        .putText("operator", operator)
        .toString()
        .getBytes(StandardCharsets.UTF_8);
  }
}
