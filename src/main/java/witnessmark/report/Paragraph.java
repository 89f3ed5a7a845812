package witnessmark.report;

import java.util.ArrayList;
import java.util.List;

/** Text that is broken at blanks to fit a width. */
public final class Paragraph {
  private Paragraph() {}

  /**
   * The lines of a text; a word that is wider than a line stays whole.
   *
   * @param width columns of a line at most
   * @param indent what the second line and those after it begin with
   */
  public static List<String> of(String text, int width, String indent) {
    List<String> lines = new ArrayList<>();
    String rest = text;
    int begun = text.length() - text.stripLeading().length();
    while (rest.length() > width) {
      int cut = rest.lastIndexOf(' ', width);
      if (cut <= begun) {
        cut = rest.indexOf(' ', width);
      }
      if (cut < 0) {
        break;
      }
      lines.add(rest.substring(0, cut).stripTrailing());
      rest = indent + rest.substring(cut + 1).stripLeading();
      begun = indent.length();
    }
    lines.add(rest);
    return lines;
  }
}
