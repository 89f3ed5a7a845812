package witnessmark.decode;

import java.nio.charset.Charset;
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
   * Decodes one frame's content.
   *
   * @return one {@link Torqued} or {@link Malformed}; with JSON pointers one an element of an array
   */
  public List<Decoded> decode(byte[] frame) {
    try {
      String text = checked(frame);
      if (profile.form() instanceof Pointers p) {
        return JsonPayload.decode(
            frame, profile.charset(), (raw, value) -> event(raw, p.pick(value)));
      }
      return List.of(event(text, pick(text)));
    } catch (Refusal e) {
      return List.of(new Malformed(e.getMessage(), Sample.of(frame)));
    }
  }

  private String checked(byte[] frame) throws Refusal {
    Charset charset = profile.charset();
    Text.atMost(
        frame,
        profile.form() instanceof Pointers ? JsonPayload.LONGEST : FrameRule.LONGEST,
        "message");
    String text = Text.of(frame, charset);
    if (profile.checksum().isPresent()) {
      profile.checksum().get().verify(text, charset);
    }
    return text;
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
    EventDraft draft = new EventDraft();
    for (EventField field : EventField.values()) {
      profile
          .values()
          .settle(field, Optional.ofNullable(sent.get(field)))
          .ifPresent(text -> draft.put(field, text));
    }
    return new Torqued(draft.event(clock), raw);
  }
}
