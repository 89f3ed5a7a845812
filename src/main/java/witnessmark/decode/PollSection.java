package witnessmark.decode;

import java.nio.charset.Charset;
import java.time.Duration;
import java.util.Optional;
import witnessmark.toml.Section;

/** Reads the table {@code [poll]} of a profile. */
final class PollSection {
  private static final String SEND = "write the text that asks the wrench";

  private PollSection() {}

  static Optional<Poll> read(Section poll, Charset charset) {
    Optional<Bytes> send = poll.requiredRead("send", SEND, t -> WireText.bytes(t, charset));
    Optional<Duration> every =
        poll.requiredRead("every", "write \"N ms\" or \"N s\", 10 ms to 3600 s", Poll::interval);
    poll.finish();
    return send.flatMap(
        s -> poll.attempt("send", SEND, () -> new Poll(s, every.orElse(Poll.SHORTEST))));
  }
}
