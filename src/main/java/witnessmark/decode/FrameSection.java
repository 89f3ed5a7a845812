package witnessmark.decode;

import java.nio.charset.Charset;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.toml.Section;

/** Reads the table {@code [frame]} of a profile. */
final class FrameSection {
  private static final String WAYS =
      "write end, or start and end, or length: exactly one of these ways";
  private static final int DEFAULT_MAX = 1024;

  private FrameSection() {}

  static Optional<FrameRule> read(Section frame, Charset charset) {
    boolean hasStart = frame.has("start");
    boolean hasEnd = frame.has("end");
    boolean hasLength = frame.has("length");
    Optional<Bytes> start = mark(frame, "start", charset);
    Optional<Bytes> end = mark(frame, "end", charset);
    OptionalLong length = frame.integer("length", 1, FrameRule.LONGEST);
    int max = (int) frame.integer("max", 1, FrameRule.LONGEST).orElse(DEFAULT_MAX);
    frame.finish();
    if (hasLength) {
      for (String key : new String[] {"start", "end", "max"}) {
        if (frame.has(key)) {
          frame.fault(key, "\"" + key + "\" has no use beside \"length\"", WAYS);
        }
      }
      return length.isPresent()
          ? Optional.of(new FrameRule.OfLength((int) length.getAsLong()))
          : Optional.empty();
    }
    if (!hasEnd) {
      frame.fault(
          "start",
          hasStart ? "a frame has a start but no end" : "it is not said where a frame ends",
          WAYS);
      return Optional.empty();
    }
    if (hasStart && start.isPresent() && end.isPresent()) {
      return frame.attempt(
          "start",
          "neither may contain the other",
          () -> new FrameRule.Between(start.get(), end.get(), max));
    }
    return end.map(e -> new FrameRule.EndedBy(e, max));
  }

  private static Optional<Bytes> mark(Section frame, String key, Charset charset) {
    String allowed = "a text of 1 to " + FrameRule.LONGEST_MARK + " bytes is allowed";
    return frame.read(
        key,
        allowed,
        text -> {
          Bytes bytes = WireText.bytes(text, charset);
          if (bytes.size() < 1 || bytes.size() > FrameRule.LONGEST_MARK) {
            throw new IllegalArgumentException("\"" + key + "\" has " + bytes.size() + " bytes");
          }
          return bytes;
        });
  }
}
