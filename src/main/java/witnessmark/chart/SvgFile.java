package witnessmark.chart;

import java.awt.Dimension;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import witnessmark.report.Provenance;
import witnessmark.sample.Study;

/** A study as a drawing of SVG 1.1. */
public final class SvgFile {
  private static final String FAMILY = "'DejaVu Sans Condensed'";

  private SvgFile() {}

  /** No two hyphens in a row, and none at the end: they would end the comment. */
  private static String comment(String title) {
    return title.replaceAll("-(?=-|$)", "- ");
  }

  /**
   * The file, in UTF-8. The same study gives the same bytes on the same day.
   *
   * @param source when and from which log it is made
   * @throws IllegalArgumentException when the study has no value
   */
  public static byte[] of(Study study, Provenance source) {
    try {
      Document document =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .getDOMImplementation()
              .createDocument("http://www.w3.org/2000/svg", "svg", null);
      SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
      context.setPrecision(2);
      context.setComment(comment(study.title()));
      SVGGraphics2D page = new SVGGraphics2D(context, false);
      page.setSVGCanvasSize(new Dimension(Sheet.WIDTH, Sheet.HEIGHT));
      Sheet.draw(page, study, new Foot(source.text(), 1, 1));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      try (Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8)) {
        page.stream(writer, true);
      }
      // where the font is missing another without serifs will do
      return out.toString(StandardCharsets.UTF_8)
          .replace(FAMILY, FAMILY + ", sans-serif")
          .getBytes(StandardCharsets.UTF_8);
    } catch (ParserConfigurationException | IOException e) {
      throw new IllegalStateException("writing to memory does not fail", e);
    }
  }
}
