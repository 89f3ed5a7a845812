package witnessmark.decode;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.toml.Section;

/** Reads the table {@code [reply]} of a profile. */
final class ReplySection {
  private ReplySection() {}

  static Reply read(Section reply, Charset charset, boolean scans) {
    List<String> words = scans ? ReplyText.OF_SCANS : ReplyText.OF_EVENTS;
    String allowed =
        words.stream().map(p -> "{" + p + "}").collect(Collectors.joining(" ", "allowed are ", ""));
    Optional<ReplyText> accepted =
        reply.read("accepted", allowed, t -> text(t, charset).only(words));
    Optional<ReplyText> refused =
        reply.read("refused", "write a text without placeholders", t -> plain(t, charset));
    Optional<ReplyText> waiting =
        reply.read("waiting", "write a text without placeholders", t -> plain(t, charset));
    if (!reply.has("accepted") && !reply.has("refused") && !reply.has("waiting")) {
      reply.fault("accepted", "[reply] says nothing", "write accepted, refused, or both");
    }
    reply.finish();
    return new Reply(accepted, refused, waiting);
  }

  private static ReplyText text(String text, Charset charset) {
    WireText.bytes(text, charset);
    return new ReplyText(text);
  }

  private static ReplyText plain(String text, Charset charset) {
    ReplyText plain = text(text, charset);
    return new Reply(Optional.empty(), Optional.of(plain), Optional.empty())
        .refused()
        .orElseThrow();
  }
}
