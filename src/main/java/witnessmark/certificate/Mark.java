package witnessmark.certificate;

import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;

/** Something drawn on a page. */
interface Mark {
  void draw(PDPageContentStream page) throws IOException;

  static Mark text(Typeface face, float size, Ink ink, float x, float y, String shown) {
    return page -> {
      page.beginText();
      page.setFont(face.font(), size);
      page.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
      page.newLineAtOffset(x, y);
      page.showText(shown);
      page.endText();
    };
  }

  static Mark box(Ink ink, float x, float y, float width, float height) {
    return page -> {
      page.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
      page.addRect(x, y, width, height);
      page.fill();
    };
  }

  static Mark line(Ink ink, float thick, float x1, float y1, float x2, float y2) {
    return page -> {
      page.setStrokingColor(ink.red(), ink.green(), ink.blue());
      page.setLineWidth(thick);
      page.moveTo(x1, y1);
      page.lineTo(x2, y2);
      page.stroke();
    };
  }

  /** A filled shape through the points. */
  static Mark shape(Ink ink, float... points) {
    return page -> {
      page.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
      page.moveTo(points[0], points[1]);
      for (int i = 2; i < points.length; i += 2) {
        page.lineTo(points[i], points[i + 1]);
      }
      page.closePath();
      page.fill();
    };
  }

  /** A disc, by four Bézier curves: 0.5523 is 4/3·(√2 − 1). */
  static Mark disc(Ink ink, float x, float y, float radius) {
    float c = 0.5523f * radius;
    return page -> {
      page.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
      page.moveTo(x + radius, y);
      page.curveTo(x + radius, y + c, x + c, y + radius, x, y + radius);
      page.curveTo(x - c, y + radius, x - radius, y + c, x - radius, y);
      page.curveTo(x - radius, y - c, x - c, y - radius, x, y - radius);
      page.curveTo(x + c, y - radius, x + radius, y - c, x + radius, y);
      page.fill();
    };
  }
}
