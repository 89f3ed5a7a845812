package witnessmark.decode;

import java.util.List;

/** Cuts a stream into frames of one length. */
final class CutAtLength implements Cut {
  private final int length;
  private final Gathered gathered;

  CutAtLength(FrameRule.OfLength rule) {
    this.length = rule.length();
    this.gathered = new Gathered(length);
  }

  @Override
  public void take(byte next, List<Frame> out) {
    gathered.add(next);
    if (gathered.length() == length) {
      Cut.content(gathered, 0, 0, length, out);
    }
  }

  @Override
  public void end(List<Frame> out) {
    if (gathered.length() > 0) {
      out.add(
          new Broken(
              "the line closed " + gathered.length() + " bytes into a frame of " + length,
              gathered.sample()));
    }
  }
}
