package witnessmark.decode;

import java.util.List;

/** Cuts a stream after every end mark. */
final class CutAtEnd implements Cut {
  private final Sought end;
  private final int max;
  private final Gathered gathered;

  /** Made once, not for each byte. */
  private final Sought.Freed keep;

  CutAtEnd(FrameRule.EndedBy rule) {
    this.end = new Sought(rule.end());
    this.max = rule.max();
    this.gathered = new Gathered(max + end.length());
    this.keep = gathered::add;
  }

  @Override
  public void take(byte next, List<Frame> out) {
    end.take(next, keep);
    if (end.found()) {
      end.release(keep);
      Cut.content(gathered, 0, end.length(), max, out);
    }
  }

  @Override
  public void end(List<Frame> out) {
    end.release(keep);
    if (gathered.length() > 0) {
      out.add(
          new Broken(
              "the line closed " + gathered.length() + " bytes into a frame", gathered.sample()));
    }
  }
}
