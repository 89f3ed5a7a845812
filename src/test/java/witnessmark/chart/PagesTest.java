package witnessmark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.pipeline.Bench;
import witnessmark.report.Provenance;
import witnessmark.sample.Gathering;
import witnessmark.sample.Question;
import witnessmark.sample.Study;
import witnessmark.sample.Worked;

class PagesTest {
  static final Provenance SOURCE =
      new Provenance("test", Bench.START, "witnessmark.local/log/0123456789abcdef", 68, "cm9vdA==");

  static Study study(Bench bench) {
    Optional<String> any = Optional.empty();
    Gathering gathering =
        new Gathering(
            new Question(
                any,
                Optional.of("a"),
                any,
                any,
                any,
                any,
                any,
                Optional.empty(),
                Optional.empty()));
    List<Long> torques = new ArrayList<>();
    for (long n = 0; n < bench.size(); n++) {
      Entry entry = bench.log().get((int) n);
      if (entry instanceof Entry.TorqueTaken) {
        torques.add(n);
      } else {
        gathering.take(n, EntryJson.read(EntryJson.bytes(entry)));
      }
    }
    torques.forEach(n -> gathering.take(n, bench.log().get(n.intValue())));
    return gathering.result().studies().get(0);
  }

  /** From one value to hundreds, stable or not, with one limit or two: each has its page. */
  @Test
  void everyStudyHasAPageOfItsOwn() throws IOException {
    String upper = "[[step.pass]]\nname = \"final\"\nmin = \"0 N.m\"\nmax = \"50 N.m\"";
    List<Study> studies =
        List.of(
            study(Worked.jobs(1, 1, i -> 0)),
            study(Worked.jobs(5, 1, i -> 0)),
            study(Worked.jobs(8, 0, i -> 0)),
            study(Worked.jobs(400, 1, i -> 0)),
            study(Worked.jobs(100, 0.8, i -> i < 50 ? -1 : 1.2)),
            study(Worked.jobs(60, 1, i -> -3, upper)));
    try (PDDocument document = Loader.loadPDF(PdfFile.of(studies, SOURCE))) {
      assertThat(document.getNumberOfPages()).isEqualTo(6);
      assertThat(text(document, 1)).contains("There is 1 value").doesNotContain("Moving ranges");
      assertThat(text(document, 3)).contains("All values are the same");
      assertThat(text(document, 4)).contains("Cpk", "Normal probability plot");
      assertThat(text(document, 5)).contains("The process was not stable");
      assertThat(text(document, 6)).contains("upper limit only", "Ppk").doesNotContain("Pp\n");
      for (int page = 1; page <= 6; page++) {
        assertThat(text(document, page))
            .contains(
                "test · made 2026-11-25 · witnessmark.local/log/0123456789abcdef · 68 · cm9vdA==")
            .contains("page " + page + " of 6");
      }
      assertThat(fonts(document)).hasSize(2).allMatch(f -> f.contains("DejaVuSansCondensed"));
    }
    for (Study study : studies) {
      String svg = new String(SvgFile.of(study, SOURCE), StandardCharsets.UTF_8);
      assertThat(svg).startsWith("<?xml").contains("torque, N.m").doesNotContain("NaN");
    }
  }

  private static String text(PDDocument document, int page) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    return stripper.getText(document).replaceAll("\\s+", " ");
  }

  /** The fonts of the first page, all of which must be in the file. */
  private static SortedSet<String> fonts(PDDocument document) throws IOException {
    SortedSet<String> names = new TreeSet<>();
    PDResources page = document.getPage(0).getResources();
    for (COSName form : page.getXObjectNames()) {
      PDResources drawn = ((PDFormXObject) page.getXObject(form)).getResources();
      for (COSName font : drawn.getFontNames()) {
        assertThat(drawn.getFont(font).isEmbedded()).isTrue();
        names.add(drawn.getFont(font).getName());
      }
    }
    return names;
  }

  @Test
  void theSameStudyGivesTheSameFiles() {
    Study study = study(Worked.jobs(40, 1, i -> 0));
    assertThat(PdfFile.of(List.of(study), SOURCE)).isEqualTo(PdfFile.of(List.of(study), SOURCE));
    assertThat(SvgFile.of(study, SOURCE)).isEqualTo(SvgFile.of(study, SOURCE));
  }
}
