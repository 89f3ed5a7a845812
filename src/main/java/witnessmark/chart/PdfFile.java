package witnessmark.chart;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import witnessmark.report.Provenance;
import witnessmark.sample.Study;

/** Studies as a PDF, one page each, with its fonts in it. */
public final class PdfFile {
  private PdfFile() {}

  /**
   * The file. The same studies give the same bytes on the same day.
   *
   * @param source when and from which log it is made
   * @throws IllegalArgumentException when a study has no value
   */
  public static byte[] of(List<Study> studies, Provenance source) {
    try (PDDocument document = new PDDocument();
        PdfBoxGraphics2DFontTextDrawer fonts = new PdfBoxGraphics2DFontTextDrawer()) {
      for (Face face : Face.values()) {
        try (InputStream in = face.open()) {
          fonts.registerFont(face.of(1).getFontName(), PDType0Font.load(document, in));
        }
      }
      document.setDocumentId(id(studies));
      document.getDocumentCatalog().setLanguage("en");
      document.getDocumentInformation().setTitle("Torque study");
      document.getDocumentInformation().setProducer(source.program());
      for (int i = 0; i < studies.size(); i++) {
        Foot foot = new Foot(source.text(), i + 1, studies.size());
        page(document, fonts, studies.get(i), foot);
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new IllegalStateException("writing to memory does not fail", e);
    }
  }

  /** The document's identifier, which follows from what it shows. */
  private static long id(List<Study> studies) {
    return studies.stream().mapToLong(s -> Objects.hash(s.title(), s.values())).sum();
  }

  private static void page(
      PDDocument document, PdfBoxGraphics2DFontTextDrawer fonts, Study study, Foot foot)
      throws IOException {
    PDRectangle size = new PDRectangle(Sheet.WIDTH, Sheet.HEIGHT);
    PdfBoxGraphics2D page = new PdfBoxGraphics2D(document, size);
    page.setFontTextDrawer(fonts);
    Sheet.draw(page, study, foot);
    page.dispose();
    PDPage paper = new PDPage(size);
    document.addPage(paper);
    try (PDPageContentStream content = new PDPageContentStream(document, paper)) {
      content.drawForm(page.getXFormObject());
    }
  }
}
