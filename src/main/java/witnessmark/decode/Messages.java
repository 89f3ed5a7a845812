package witnessmark.decode;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Decodes the payloads of our own MQTT topics (docs/messages.md). */
public final class Messages {
  private Messages() {}

  /**
   * Decodes a payload of the topic {@code torque}: one event, or a burst of at most 10 000.
   *
   * @return one {@link Torqued} or {@link Malformed} an element, at least one
   */
  public static List<Decoded> torque(byte[] payload) {
    return decode(payload, Messages::torqued);
  }

  /**
   * Decodes a payload of the topic {@code scan}: one scan, or a burst of at most 10 000.
   *
   * @return one {@link Scanned} or {@link Malformed} an element, at least one
   */
  public static List<Decoded> scan(byte[] payload) {
    return decode(payload, Messages::scanned);
  }

  /** A payload that was too large to be kept, by what is known of it. */
  public static Malformed tooLarge(Sample sample) {
    return new Malformed(Text.tooLong("payload", sample.length(), JsonPayload.LONGEST), sample);
  }

  private static List<Decoded> decode(byte[] payload, JsonPayload.ElementReader reader) {
    try {
      Text.atMost(payload, JsonPayload.LONGEST, "payload");
      String text = Text.of(payload, StandardCharsets.UTF_8);
      return JsonPayload.decode(text, StandardCharsets.UTF_8, reader);
    } catch (Refusal e) {
      return List.of(new Malformed(e.getMessage(), Sample.of(payload)));
    }
  }

  private static Decoded torqued(String raw, Json value) throws Refusal {
    Map<String, Json> fields = fields(value, "an event");
    EventDraft draft = new EventDraft();
    for (EventField field : EventField.OF_EVENTS) {
      Json found = fields.getOrDefault(field.code(), new Json.Nothing());
      if (!(found instanceof Json.Nothing)) {
        draft.put(field, text(field, found));
      }
    }
    return new Torqued(draft.event(Rfc3339::read), raw);
  }

  private static String text(EventField field, Json found) throws Refusal {
    boolean decimal = field.decimal();
    if (found instanceof Json.Number n && (decimal || field == EventField.EVENT)) {
      return n.digits();
    }
    if (found instanceof Json.Text t && field != EventField.EVENT) {
      return t.text();
    }
    throw new Refusal(
        field.code()
            + " is "
            + found.kind()
            + "; "
            + (field == EventField.EVENT
                ? "a whole number without quotes"
                : decimal ? "a decimal as a text or a number" : "a text")
            + " is allowed");
  }

  private static Decoded scanned(String raw, Json value) throws Refusal {
    Map<String, Json> fields = fields(value, "a scan");
    Optional<String> scan = text(fields, "scan");
    if (scan.isEmpty()) {
      throw new Refusal("the message has no scan, which is required");
    }
    try {
      return new Scanned(scan.get(), text(fields, "operator"), raw);
    } catch (IllegalArgumentException e) {
      throw new Refusal(e.getMessage());
    }
  }

  private static Optional<String> text(Map<String, Json> fields, String name) throws Refusal {
    Json found = fields.getOrDefault(name, new Json.Nothing());
    if (found instanceof Json.Text t) {
      return Optional.of(t.text());
    }
    if (found instanceof Json.Nothing) {
      return Optional.empty();
    }
    throw new Refusal(name + " is " + found.kind() + "; a text is allowed");
  }

  private static Map<String, Json> fields(Json value, String what) throws Refusal {
    if (value instanceof Json.Fields f) {
      return f.fields();
    }
    throw new Refusal(what + " is " + value.kind() + "; a JSON object is allowed");
  }
}
