package witnessmark.decode;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Cuts a complete line in the plainest way, to compare the streaming framer with. */
final class ReferenceFramer {
  private final String line;
  private final List<Frame> frames = new ArrayList<>();

  private ReferenceFramer(byte[] line) {
    this.line = new String(line, StandardCharsets.ISO_8859_1);
  }

  static List<Frame> frames(FrameRule rule, byte[] line) {
    ReferenceFramer framer = new ReferenceFramer(line);
    if (rule instanceof FrameRule.EndedBy r) {
      framer.ended(text(r.end()), r.max());
    } else if (rule instanceof FrameRule.Between r) {
      framer.between(text(r.start()), text(r.end()), r.max());
    } else if (rule instanceof FrameRule.OfLength r) {
      framer.ofLength(r.length());
    }
    return framer.frames;
  }

  private void ended(String end, int max) {
    int from = 0;
    for (int at = line.indexOf(end); at >= 0; at = line.indexOf(end, from)) {
      content(from, from, at, at + end.length(), max);
      from = at + end.length();
    }
    broken(from, line.length(), "the line closed %d bytes into a frame");
  }

  private void between(String start, String end, int max) {
    int from = 0;
    int at = line.indexOf(start);
    while (at >= 0) {
      broken(from, at, "%d bytes between frames; a frame has a start and an end");
      int inner = at + start.length();
      int close = line.indexOf(end, inner);
      int next = line.indexOf(start, inner);
      if (next >= 0 && (close < 0 || next + start.length() < close + end.length())) {
        broken(at, next, "a frame was cut off after %d bytes by the start of the next");
        from = next;
        at = next;
      } else if (close >= 0) {
        from = close + end.length();
        content(at, inner, close, from, max);
        at = line.indexOf(start, from);
      } else {
        broken(at, line.length(), "the line closed %d bytes into a frame");
        return;
      }
    }
    broken(
        from, line.length(), "%d bytes before the line closed are no frame; a frame has a start");
  }

  private void ofLength(int length) {
    int from = 0;
    for (; from + length <= line.length(); from += length) {
      frames.add(new Whole(bytes(from, from + length)));
    }
    broken(from, line.length(), "the line closed %d bytes into a frame of " + length);
  }

  private void content(int from, int inner, int close, int to, int max) {
    if (close - inner > max) {
      String reason = "a frame of " + (close - inner) + " bytes; at most " + max + " are allowed";
      frames.add(new Broken(reason, Sample.of(bytes(from, to))));
    } else if (close > inner) {
      frames.add(new Whole(bytes(inner, close)));
    }
  }

  private void broken(int from, int to, String reason) {
    if (to > from) {
      frames.add(new Broken(String.format(reason, to - from), Sample.of(bytes(from, to))));
    }
  }

  private byte[] bytes(int from, int to) {
    return line.substring(from, to).getBytes(StandardCharsets.ISO_8859_1);
  }

  private static String text(Bytes bytes) {
    return new String(bytes.toArray(), StandardCharsets.ISO_8859_1);
  }
}
