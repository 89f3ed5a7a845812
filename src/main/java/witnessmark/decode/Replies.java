package witnessmark.decode;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** The bytes that answer a wrench or a scanner by its profile. */
public final class Replies {
  private Replies() {}

  /**
   * The answer to an event that is on record; empty where the profile has none.
   *
   * @param event the wrench's own number; nothing is written where it sent none
   * @param verdict the verdict's word, {@code repeat} or {@code unjudged}
   * @param fastener the position; nothing is written where none was found
   * @param effect the effect's word
   */
  public static Optional<byte[]> accepted(
      Profile profile,
      String wrench,
      OptionalLong event,
      String verdict,
      Optional<String> fastener,
      String effect) {
    Map<String, String> values =
        Map.of(
            "wrench", wrench,
            "event", event.isPresent() ? Long.toString(event.getAsLong()) : "",
            "verdict", verdict,
            "fastener", fastener.orElse(""),
            "effect", effect);
    return profile.reply().accepted().map(t -> t.fill(values).getBytes(profile.charset()));
  }

  /** The answer to a scan that did something; empty where the profile has none. */
  public static Optional<byte[]> accepted(Profile profile, String meaning) {
    return profile
        .reply()
        .accepted()
        .map(t -> t.fill(Map.of("meaning", meaning)).getBytes(profile.charset()));
  }

  /**
   * The answer to what could not be read, and to a scan that did nothing; empty where the profile
   * has none.
   */
  public static Optional<byte[]> refused(Profile profile) {
    return profile.reply().refused().map(t -> t.text().getBytes(profile.charset()));
  }

  /**
   * The answer to what is kept until it can be recorded: a refusal where the profile knows no
   * better; empty where it has none.
   */
  public static Optional<byte[]> waiting(Profile profile) {
    return profile
        .reply()
        .waiting()
        .or(() -> profile.reply().refused())
        .map(t -> t.text().getBytes(profile.charset()));
  }
}
