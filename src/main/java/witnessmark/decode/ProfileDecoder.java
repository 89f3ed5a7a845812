package witnessmark.decode;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Decodes frames, or MQTT payloads, by a profile. */
public final class ProfileDecoder {
  private final Profile profile;
  private final EventDraft.TimeReader clock;

  public ProfileDecoder(Profile profile) {
    this.profile = profile;
    this.clock =
        profile.time().<EventDraft.TimeReader>map(rule -> rule::read).orElse(Rfc3339::read);
  }

  /**
   * Decodes one frame's content, its checksum first.
   *
   * @return one {@link Torqued}, {@link Scanned} or {@link Malformed}; with JSON pointers one an
   *     element of an array
   */
  public List<Decoded> decode(byte[] frame) {
    try {
      if (profile.form() instanceof Pointers pointers) {
        return json(pointers, frame);
      }
      Text.atMost(frame, FrameRule.LONGEST, "message");
      String text = Text.of(frame, profile.charset());
      summed(text);
      return List.of(event(text, pick(text)));
    } catch (Refusal e) {
      return List.of(new Malformed(e.getMessage(), Sample.of(frame)));
    }
  }

  private List<Decoded> json(Pointers pointers, byte[] frame) throws Refusal {
    Text.atMost(frame, JsonPayload.LONGEST, "message");
    String text = summed(Text.of(frame, profile.charset()));
    return JsonPayload.decode(
        text, profile.charset(), (raw, value) -> event(raw, pointers.pick(value)));
  }

  /** Verifies the checksum; the part of the text that it is over, or all without a checksum. */
  private String summed(String text) throws Refusal {
    return profile.checksum().isPresent()
        ? profile.checksum().get().verify(text, profile.charset())
        : text;
  }

  private Map<EventField, String> pick(String text) throws Refusal {
    if (profile.form() instanceof Columns c) {
      return c.pick(text);
    }
    if (profile.form() instanceof Shape s) {
      return s.pick(text);
    }
    throw new IllegalStateException("no way to read " + profile.form());
  }

  private Decoded event(String raw, Map<EventField, String> sent) throws Refusal {
    if (profile.scans()) {
      return scan(raw, sent);
    }
    EventDraft draft = new EventDraft();
    for (EventField field : EventField.OF_EVENTS) {
      settled(field, sent).ifPresent(text -> draft.put(field, text));
    }
    return new Torqued(draft.event(clock), raw);
  }

  private Decoded scan(String raw, Map<EventField, String> sent) throws Refusal {
    Optional<String> code = settled(EventField.SCAN, sent);
    if (code.isEmpty()) {
      throw new Refusal("the message has no scan, which is required");
    }
    try {
      return new Scanned(code.get(), settled(EventField.OPERATOR, sent), raw);
    } catch (IllegalArgumentException e) {
      throw new Refusal(e.getMessage());
    }
  }

  private Optional<String> settled(EventField field, Map<EventField, String> sent) throws Refusal {
    return profile.values().settle(field, Optional.ofNullable(sent.get(field)));
  }
}
