package witnessmark.decode;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts the bytes of a serial line into frames, however they are chunked, in bounded memory. No byte
 * disappears but empty frames, which carry nothing. For one thread.
 */
public final class Framer {
  private final Cut cut;

  public Framer(FrameRule rule) {
    this.cut = cut(rule);
  }

  private static Cut cut(FrameRule rule) {
    if (rule instanceof FrameRule.EndedBy r) {
      return new CutAtEnd(r);
    }
    if (rule instanceof FrameRule.Between r) {
      return new CutBetween(r);
    }
    if (rule instanceof FrameRule.OfLength r) {
      return new CutAtLength(r);
    }
    throw new IllegalArgumentException("no framer for " + rule);
  }

  /**
   * Takes the next bytes of the line.
   *
   * @param chunk where they are
   * @param length how many of its first bytes are meant
   * @return the frames they complete, in order
   */
  public List<Frame> feed(byte[] chunk, int length) {
    List<Frame> frames = new ArrayList<>();
    for (int i = 0; i < length; i++) {
      cut.take(chunk[i], frames);
    }
    return frames;
  }

  /** The line closed: bytes of an unfinished frame become broken, and the next byte starts anew. */
  public List<Frame> end() {
    List<Frame> frames = new ArrayList<>();
    cut.end(frames);
    return frames;
  }
}
