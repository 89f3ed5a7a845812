package witnessmark.decode;

import java.util.List;

/** One way of cutting a stream into frames; what it has not given out yet it remembers. */
interface Cut {
  /** Takes the next byte; a frame it completes goes to {@code out}. */
  void take(byte next, List<Frame> out);

  /** The stream ends here; remaining bytes go to {@code out} as broken. */
  void end(List<Frame> out);

  /** Gives out what was gathered as a whole frame, or as broken where it is too long. */
  static void content(Gathered gathered, int start, int end, int max, List<Frame> out) {
    long content = gathered.length() - start - end;
    if (content > max) {
      out.add(
          new Broken(
              "a frame of " + content + " bytes; at most " + max + " are allowed",
              gathered.sample()));
    } else if (content > 0) {
      out.add(new Whole(gathered.between(start, end)));
    }
    gathered.clear();
  }
}
