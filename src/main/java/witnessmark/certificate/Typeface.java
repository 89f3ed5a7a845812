package witnessmark.certificate;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import witnessmark.torque.Visible;

/** A font in a document: what it can show, how wide that is, and where lines break. */
final class Typeface {
  private static final float EM = 1000;

  private final PDType0Font font;
  private final CmapLookup glyphs;
  private final Map<Integer, Float> widths = new HashMap<>();

  Typeface(PDDocument document, Face face) throws IOException {
    try (InputStream in = Typeface.class.getResourceAsStream(face.resource())) {
      if (in == null) {
        throw new IOException("the font " + face.resource() + " is part of the program");
      }
      TrueTypeFont file = new TTFParser().parse(new RandomAccessReadBuffer(in));
      // one glyph a character, so that what is read from the page is what was written there
      file.setEnableGsub(false);
      font = PDType0Font.load(document, file, true);
      glyphs = file.getUnicodeCmapLookup();
    }
  }

  PDType0Font font() {
    return font;
  }

  /**
   * The text as it is shown: on one line, and with the code of each character that has no glyph, or
   * that would only steer how others are laid out, as {@code [U+202E]}.
   */
  String shown(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (blank(c)) {
                shown.append(' ');
              } else if (Visible.hidden(c) || glyphs.getGlyphId(c) == 0) {
                shown.append(String.format("[U+%04X]", c));
              } else {
                shown.appendCodePoint(c);
              }
            });
    return shown.toString();
  }

  private static boolean blank(int c) {
    return c == '\t' || c == '\n' || c == '\r' || Character.getType(c) == Character.SPACE_SEPARATOR;
  }

  /** The width of a shown text in points. */
  float width(String shown, float size) {
    float width = 0;
    for (int i = 0; i < shown.length(); i = shown.offsetByCodePoints(i, 1)) {
      width += widths.computeIfAbsent(shown.codePointAt(i), this::advance);
    }
    return width * size / EM;
  }

  private float advance(int c) {
    try {
      return font.getStringWidth(Character.toString(c));
    } catch (IOException e) {
      throw new IllegalStateException("the font is in memory", e);
    }
  }

  /**
   * A shown text broken at blanks, and inside a word where it is wider than a line. Signs before
   * and behind a word stay with it.
   */
  List<String> wrapped(String shown, float size, float width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : shown.strip().split("(?<!↳) +(?!\\*$)")) {
      String rest = word;
      if (line.length() > 0 && width(line + " " + rest, size) <= width) {
        line.append(' ').append(rest);
        continue;
      }
      if (line.length() > 0) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (width(rest, size) > width) {
        int cut = cut(rest, size, width);
        lines.add(rest.substring(0, cut));
        rest = rest.substring(cut);
      }
      line.append(rest);
    }
    lines.add(line.toString());
    return lines;
  }

  /** After a mark that may end a line where there is one in the second half, else where it fits. */
  private int cut(String word, float size, float width) {
    int fits = word.offsetByCodePoints(0, 1);
    int mark = 0;
    while (fits < word.length()) {
      int next = word.offsetByCodePoints(fits, 1);
      if (width(word.substring(0, next), size) > width) {
        break;
      }
      if ("-/._,:".indexOf(word.charAt(fits - 1)) >= 0) {
        mark = fits;
      }
      fits = next;
    }
    return mark > fits / 2 ? mark : fits;
  }
}
