package witnessmark.decode;

import java.util.List;

/** Cuts a stream after every end mark. */
final class CutAtEnd implements Cut {
  private final Sought end;
  private final int max;
  private final Gathered gathered;

  CutAtEnd(FrameRule.EndedBy rule) {
    this.end = new Sought(rule.end());
    this.max = rule.max();
    this.gathered = new Gathered(max + end.length());
  }

  @Override
  public void take(byte next, List<Frame> out) {
    end.take(next, gathered::add);
    if (end.found()) {
      end.release(gathered::add);
      Cut.content(gathered, 0, end.length(), max, out);
    }
  }

  @Override
  public void end(List<Frame> out) {
    end.release(gathered::add);
    if (gathered.length() > 0) {
      out.add(
          new Broken(
              "the line closed " + gathered.length() + " bytes into a frame", gathered.sample()));
    }
  }
}
