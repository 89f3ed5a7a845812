package witnessmark.decode;

import java.util.List;

/**
 * Cuts frames out between a start and an end mark. A start within a frame ends it as broken and
 * begins the next: the end was lost, and the new frame need not be.
 */
final class CutBetween implements Cut {
  private final FrameRule.Between rule;
  private final Sought start;
  private final Sought end;
  private final Gathered gathered;

  /** Made once, not for each byte. */
  private final Sought.Freed keep;

  private boolean inside;

  CutBetween(FrameRule.Between rule) {
    this.rule = rule;
    this.start = new Sought(rule.start());
    this.end = new Sought(rule.end());
    this.gathered = new Gathered(rule.max() + start.length() + end.length());
    this.keep = gathered::add;
  }

  @Override
  public void take(byte next, List<Frame> out) {
    start.take(next, keep);
    if (inside) {
      // The search for the start has gathered these bytes, or will.
      end.take(next, free -> {});
    }
    if (start.found()) {
      broken(out);
      start.release(keep);
      forgetEnd();
      inside = true;
    } else if (inside && end.found()) {
      start.release(keep);
      forgetEnd();
      Cut.content(gathered, start.length(), end.length(), rule.max(), out);
      inside = false;
    }
  }

  @Override
  public void end(List<Frame> out) {
    start.release(keep);
    forgetEnd();
    long length = gathered.length();
    if (length > 0) {
      String reason =
          inside
              ? "the line closed " + length + " bytes into a frame"
              : length + " bytes before the line closed are no frame; a frame has a start";
      out.add(new Broken(reason, gathered.sample()));
    }
    inside = false;
  }

  private void broken(List<Frame> out) {
    long length = gathered.length();
    if (length > 0) {
      String reason =
          inside
              ? "a frame was cut off after " + length + " bytes by the start of the next"
              : length + " bytes between frames; a frame has a start and an end";
      out.add(new Broken(reason, gathered.sample()));
    }
  }

  private void forgetEnd() {
    end.release(free -> {});
  }
}
