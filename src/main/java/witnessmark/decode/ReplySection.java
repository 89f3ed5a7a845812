package witnessmark.decode;

import java.nio.charset.Charset;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.toml.Section;

/** Reads the table {@code [reply]} of a profile. */
final class ReplySection {
  private static final String PLACEHOLDERS =
      ReplyText.PLACEHOLDERS.stream()
          .map(p -> "{" + p + "}")
          .collect(Collectors.joining(" ", "allowed are ", ""));

  private ReplySection() {}

  static Reply read(Section reply, Charset charset) {
    Optional<ReplyText> accepted = reply.read("accepted", PLACEHOLDERS, t -> text(t, charset));
    Optional<ReplyText> refused =
        reply.read("refused", "write a text without placeholders", t -> plain(t, charset));
    if (!reply.has("accepted") && !reply.has("refused")) {
      reply.fault("accepted", "[reply] says nothing", "write accepted, refused, or both");
    }
    reply.finish();
    return new Reply(accepted, refused);
  }

  private static ReplyText text(String text, Charset charset) {
    WireText.bytes(text, charset);
    return new ReplyText(text);
  }

  private static ReplyText plain(String text, Charset charset) {
    ReplyText plain = text(text, charset);
    return new Reply(Optional.empty(), Optional.of(plain)).refused().orElseThrow();
  }
}
