package witnessmark.decode;

import java.nio.charset.Charset;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Label;

/**
 * One way of speaking that a wrench, or a scanner, may have (docs/profile-format.md).
 *
 * @param name 1 to 64 printable characters
 * @param charset UTF-8 or Latin-1
 * @param frame how a serial line's bytes fall into frames; a profile without it serves MQTT only
 * @param checksum what is verified before anything is read
 * @param form where the fields stand
 * @param values how what is written becomes ours
 * @param time how the clock is written; without it RFC 3339
 * @param poll what to ask
 * @param reply what to answer
 */
public record Profile(
    String name,
    Charset charset,
    Optional<FrameRule> frame,
    Optional<Checksum> checksum,
    MessageForm form,
    Values values,
    Optional<TimeRule> time,
    Optional<Poll> poll,
    Reply reply) {
  public Profile {
    Label.check("profile name", name);
    Objects.requireNonNull(charset, "charset");
    Objects.requireNonNull(frame, "frame");
    Objects.requireNonNull(checksum, "checksum");
    Objects.requireNonNull(form, "form");
    Objects.requireNonNull(values, "values");
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(poll, "poll");
    Objects.requireNonNull(reply, "reply");
  }

  /** Whether its messages are scans. */
  public boolean scans() {
    return form.scans();
  }
}
