package witnessmark.chart;

import java.awt.BasicStroke;
import java.awt.Color;

/** Colours and strokes. What they tell is said by a shape or a word as well. */
final class Ink {
  static final Color TEXT = new Color(0x22, 0x22, 0x22);
  static final Color FAINT = new Color(0xdd, 0xdd, 0xdd);
  static final Color VALUE = new Color(0x2b, 0x4f, 0x72);
  static final Color FILL = new Color(0xa9, 0xbd, 0xd1);
  static final Color LIMIT = new Color(0x55, 0x55, 0x55);
  static final Color BAND = new Color(0x6b, 0x2d, 0x5c);
  static final Color SIGNAL = new Color(0xb3, 0x47, 0x00);

  static final BasicStroke HAIR = new BasicStroke(0.5f);
  static final BasicStroke LINE = new BasicStroke(0.8f);
  static final BasicStroke STRONG = new BasicStroke(1.4f);
  static final BasicStroke DASHED =
      new BasicStroke(
          0.9f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {5, 3}, 0);

  private Ink() {}
}
