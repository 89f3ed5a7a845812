package witnessmark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import witnessmark.pipeline.Bench;
import witnessmark.sample.Study;

/** Names that would be markup, script or formulas if they were not written as text. */
class InjectionTest {
  /** A study of a procedure of that id. */
  private static Study study(String id) {
    String quoted = "\"" + id.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    Bench bench = Bench.on(Bench.group(8).replace("\"P-1\"", quoted));
    for (int i = 1; i <= 8; i++) {
      bench.hitOn("a/" + i, "5" + i % 3 + ".1 N.m");
    }
    return PagesTest.study(bench);
  }

  @Test
  void aNameEndsNoCommentAndBeginsNoElementOfADrawing() throws Exception {
    for (String id :
        new String[] {"---><script>alert(1)</script>", "a--", "]]>", "&lt;", "'\"><x/>"}) {
      byte[] svg = SvgFile.of(study(id), PagesTest.SOURCE);
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
      assertThat(document.getElementsByTagName("script").getLength()).as(id).isZero();
      assertThat(document.getElementsByTagName("x").getLength()).as(id).isZero();
      assertThat(document.getDocumentElement().getTextContent()).as(id).contains(id);
    }
  }

  @Test
  void aNameIsTextOnAPageAndNothingActs() throws Exception {
    byte[] pdf =
        PdfFile.of(
            java.util.List.of(study(") /JS (app.alert(1)) /OpenAction (")), PagesTest.SOURCE);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getDocumentCatalog().getOpenAction()).isNull();
      assertThat(document.getDocumentCatalog().getNames()).isNull();
      assertThat(document.getPage(0).getAnnotations()).isEmpty();
      assertThat(new PDFTextStripper().getText(document)).contains("/JS (app.alert(1))");
    }
  }
}
