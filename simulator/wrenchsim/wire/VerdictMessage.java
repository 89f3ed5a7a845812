package wrenchsim.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/**
 * What the bridge made of one reading.
 *
 * @param wrench the serial number in the reading
 * @param event the wrench's number for it, where it had one
 * @param verdict the verdict's word, absent where nothing was judged
 * @param effect what it changed, e.g. {@code credited}
 */
public record VerdictMessage(
    String wrench, Optional<Long> event, Optional<String> verdict, String effect) {

  private static final String WHAT = "the verdict message";

  /** Reads the CloudEvents document; only {@code data} counts here. */
  public static VerdictMessage read(byte[] payload) throws MalformedMessage {
    JsonNode data = JsonText.object(payload, WHAT).path("data");
    return new VerdictMessage(
        JsonText.required(data, "wrench", WHAT),
        JsonText.whole(data, "event"),
        JsonText.text(data, "verdict"),
        JsonText.text(data, "effect").orElse("none"));
  }

  /** Whether what is expected next must be another thing now. */
  public boolean changesExpect() {
    return effect.equals("credited")
        || effect.equals("nonconforming")
        || effect.equals("loosened")
        || effect.equals("asks");
  }

  /** Whether it was taken as an undoing. */
  public boolean isLoosened() {
    return effect.equals("loosened");
  }

  /** Whether the fastener has to be undone before it can be tightened properly. */
  public boolean spoilsFastener() {
    String word = verdict.orElse("");
    return effect.equals("nonconforming")
        || word.equals("over-torque")
        || word.equals("angle-low")
        || word.equals("angle-high");
  }
}
