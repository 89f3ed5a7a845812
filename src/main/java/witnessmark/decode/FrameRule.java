package witnessmark.decode;

/** How a serial line's bytes fall into frames. */
public sealed interface FrameRule {
  /** The longest content a frame may have, in bytes, by any rule. */
  int LONGEST = 65_536;

  /** The longest start or end, in bytes. */
  int LONGEST_MARK = 16;

  /**
   * A frame ends with a mark.
   *
   * @param end 1 to 16 bytes
   * @param max longest content in bytes, 1 to 65 536
   */
  record EndedBy(Bytes end, int max) implements FrameRule {
    public EndedBy {
      mark(end);
      size(max);
    }
  }

  /**
   * A frame stands between two marks, neither of which contains the other.
   *
   * @param start 1 to 16 bytes
   * @param end 1 to 16 bytes
   * @param max longest content in bytes, 1 to 65 536
   */
  record Between(Bytes start, Bytes end, int max) implements FrameRule {
    public Between {
      mark(start);
      mark(end);
      size(max);
      if (start.contains(end) || end.contains(start)) {
        throw new IllegalArgumentException("start and end contain one another");
      }
    }
  }

  /**
   * Every frame has the same length.
   *
   * @param length bytes, 1 to 65 536
   */
  record OfLength(int length) implements FrameRule {
    public OfLength {
      size(length);
    }
  }

  private static void mark(Bytes mark) {
    if (mark.size() < 1 || mark.size() > LONGEST_MARK) {
      throw new IllegalArgumentException("a mark has " + mark.size() + " bytes");
    }
  }

  private static void size(int bytes) {
    if (bytes < 1 || bytes > LONGEST) {
      throw new IllegalArgumentException(bytes + " bytes are out of range");
    }
  }
}
