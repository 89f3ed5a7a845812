package witnessmark.cli.answer;

import java.io.PrintWriter;
import witnessmark.report.Paragraph;
import witnessmark.torque.Visible;

/** Where long texts are printed for people, in lines that fit a screen. */
public final class Page {
  /** Columns of a line at most. */
  static final int WIDTH = 100;

  /** A blank at which no line is broken. */
  public static final char BOUND = '\u00a0';

  private final PrintWriter out;

  public Page(PrintWriter out) {
    this.out = out;
  }

  /** An empty line. */
  public void space() {
    out.println();
    out.flush();
  }

  /** A line that holds something which is not to be broken, as a path. */
  public void line(String text) {
    out.println(text);
    out.flush();
  }

  /** A text whose further lines begin at the margin. */
  public void say(String text) {
    say(text, 0);
  }

  /**
   * A text.
   *
   * @param indent the blanks before its second line and those after it
   */
  public void say(String text, int indent) {
    Paragraph.of(Visible.of(text), WIDTH, " ".repeat(indent))
        .forEach(l -> out.println(l.replace(BOUND, ' ')));
    out.flush();
  }
}
