package wrenchsim.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/**
 * What the bridge made of one reading.
 *
 * @param wrench the serial number in the reading, empty where the message has no reading
 * @param event the wrench's number for it, where it had one
 * @param torque the digits of the reading, where the message has them
 * @param verdict the verdict's word, absent where nothing was judged
 * @param effect what it changed, e.g. {@code credited}
 * @param fastener where the bridge believes the wrench was, where it believes anything
 * @param entry the ledger entry of this verdict, where the message tells
 * @param assigns the reading's own entry, where a person has placed it since
 */
public record VerdictMessage(
    String wrench,
    Optional<Long> event,
    Optional<String> torque,
    Optional<String> verdict,
    String effect,
    Optional<String> fastener,
    Optional<Long> entry,
    Optional<Long> assigns) {

  private static final String WHAT = "the verdict message";

  /** Reads the CloudEvents document; only {@code data} counts here. */
  public static VerdictMessage read(byte[] payload) throws MalformedMessage {
    JsonNode data = JsonText.object(payload, WHAT).path("data");
    Optional<Long> assigns = JsonText.whole(data, "assigns");
    return new VerdictMessage(
        assigns.isPresent()
            ? JsonText.text(data, "wrench").orElse("")
            : JsonText.required(data, "wrench", WHAT),
        JsonText.whole(data, "event"),
        JsonText.text(data, "torque"),
        JsonText.text(data, "verdict"),
        JsonText.text(data, "effect").orElse("none"),
        JsonText.text(data, "fastener"),
        JsonText.whole(data, "entry"),
        assigns);
  }

  /** Whether what is expected next must be another thing now. */
  public boolean changesExpect() {
    return isCredited() || effect.equals("nonconforming") || isLoosened() || asks();
  }

  /** Whether a pass of a fastener is done with it. */
  public boolean isCredited() {
    return effect.equals("credited");
  }

  /** Whether the fastener stays expected. */
  public boolean isAgain() {
    return effect.equals("again");
  }

  /** Whether it was taken as an undoing. */
  public boolean isLoosened() {
    return effect.equals("loosened");
  }

  /** Whether it was taken as a second hit on a tight fastener. */
  public boolean isRechecked() {
    return effect.equals("rechecked");
  }

  /** Whether a person has to say which fastener it was. */
  public boolean asks() {
    return effect.equals("asks");
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
