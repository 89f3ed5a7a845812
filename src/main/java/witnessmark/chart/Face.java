package witnessmark.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.InputStream;

/** A font that the program carries with it. */
enum Face {
  PLAIN("DejaVuSansCondensed"),
  BOLD("DejaVuSansCondensed-Bold");

  private final String file;
  private Font font;

  Face(String file) {
    this.file = file;
  }

  /** The font file. */
  InputStream open() throws IOException {
    String name = "/net/sf/jasperreports/fonts/dejavu/" + file + ".ttf";
    InputStream in = Face.class.getResourceAsStream(name);
    if (in == null) {
      throw new IOException("the font " + name + " is part of the program");
    }
    return in;
  }

  /** The font in a size of so many points. */
  synchronized Font of(float size) {
    if (font == null) {
      try (InputStream in = open()) {
        font = Font.createFont(Font.TRUETYPE_FONT, in);
        // so that a drawing that names it finds it
        GraphicsEnvironment.getLocalGraphicsEnvironment().registerFont(font);
      } catch (IOException | FontFormatException e) {
        throw new IllegalStateException("the font is part of the program", e);
      }
    }
    return font.deriveFont(this == BOLD ? Font.BOLD : Font.PLAIN, size);
  }
}
