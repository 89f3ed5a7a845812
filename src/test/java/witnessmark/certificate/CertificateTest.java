package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.pipeline.Bench;

/** What stands on a certificate's pages. */
class CertificateTest {
  @TempDir private Path directory;

  private List<List<String>> pages(Bench bench, String unit, Paper paper) {
    Proved proved = Cases.proved(directory.resolve("log"), bench, unit);
    return PageTexts.read(Certificate.render(proved, paper, Cases.PROGRAM));
  }

  private static List<String> all(List<List<String>> pages) {
    return pages.stream().flatMap(List::stream).toList();
  }

  @Test
  void oneFastenerTakesOnePage() {
    List<List<String>> pages = pages(Cases.closed(1, Cases.UNIT, "Module"), Cases.UNIT, Paper.A4);
    assertThat(pages).hasSize(1);
    assertThat(pages.get(0))
        .contains(
            "RECORD OF TIGHTENING",
            "Unit ATR-26-0147",
            "RAM-210 revision C, Module",
            "Job J-6 closed: every fastener, confirmation and measurement stands.",
            "group-a/1 49.64 N.m 35.5 in-band TW-0417 badge-07 08:00:35 7",
            "witnessmark ledger check-proof FILE.pdf --key shop.pub")
        .anyMatch(l -> l.startsWith("Torque is not clamp load: friction decides"))
        .anyMatch(l -> l.endsWith("page 1 of 1"));
  }

  @Test
  void everyFastenerAndTryIsThereAndEveryTablePageHasItsHead() {
    List<List<String>> pages =
        pages(Cases.closed(120, Cases.UNIT, "Module"), Cases.UNIT, Paper.LETTER);
    List<String> all = all(pages);
    assertThat(all.stream().filter(l -> l.matches("group-[a-j]/[0-9]+ 4[89]\\..*"))).hasSize(120);
    assertThat(all.stream().filter(l -> l.matches("↳ group-[a-j]/[0-9]+ 41\\..*"))).hasSize(13);
    assertThat(all.stream().filter(l -> l.matches("↳ group-[a-j]/[0-9]+ 58\\.4 N\\.m.*")))
        .hasSize(3);
    assertThat(all.stream().filter(l -> l.contains("replace by badge-11 as quality"))).hasSize(3);
    for (int p = 0; p < pages.size(); p++) {
      assertThat(pages.get(p))
          .anyMatch(l -> l.endsWith("of " + pages.size()))
          .hasSizeGreaterThan(12);
      if (pages.get(p).stream().anyMatch(l -> l.startsWith("group-"))) {
        assertThat(pages.get(p))
            .contains("FASTENER MEASURED IN ITS BAND DEGREES VERDICT WRENCH BY TIME, UTC ENTRY");
      }
    }
  }

  @Test
  void aDraftSaysSoAcrossEveryPage() {
    List<List<String>> pages = pages(Cases.begun(30, Cases.UNIT, "Module"), Cases.UNIT, Paper.A4);
    assertThat(pages).allMatch(p -> p.contains("DRAFT: JOB NOT ENDED"));
    assertThat(all(pages))
        .contains("Job J-6 open: not ended.", "gap, Gap left and right: not done.");
  }

  @Test
  void anAbandonedJobSaysWhatIsMissing() {
    assertThat(all(pages(Cases.abandoned(2), Cases.UNIT, Paper.A4)))
        .contains("Job J-6 abandoned incomplete.", "wire, Safety wire: not done.")
        .noneMatch(l -> l.contains("DRAFT"));
  }

  @Test
  void charactersWithoutGlyphOrWithPowerOverOthersAreShownByTheirCodes() throws IOException {
    String unit = "Ωmega-Ж-中";
    assertThat(all(pages(Cases.closed(1, unit, "Модуль Μονάδα"), unit, Paper.A4)))
        .contains("Unit Ωmega-Ж-[U+4E2D]", "RAM-210 revision C, Модуль Μονάδα");
    try (PDDocument document = new PDDocument()) {
      Typeface plain = new Typeface(document, Face.PLAIN);
      assertThat(plain.shown("a\u202eb\u200bc\u0000d\ne\u00a0f\ue000\ud800g\ud83d\udd29"))
          .isEqualTo("a[U+202E]b[U+200B]c[U+0000]d e f[U+E000][U+D800]g[U+1F529]");
    }
  }

  @Test
  void theSameEntriesMakeTheSameBytes() {
    Proved proved =
        Cases.proved(directory.resolve("log"), Cases.closed(3, Cases.UNIT, "Module"), Cases.UNIT);
    byte[] once = Certificate.render(proved, Paper.A4, Cases.PROGRAM);
    assertThat(Certificate.render(proved, Paper.A4, Cases.PROGRAM)).isEqualTo(once);
    assertThat(Certificate.render(proved, Paper.LETTER, Cases.PROGRAM)).isNotEqualTo(once);
  }

  @Test
  void aLongWordIsBrokenAndNothingRunsOverTheMargin() {
    String unit = "w".repeat(64);
    List<String> all = all(pages(Cases.closed(1, unit, "m".repeat(100)), unit, Paper.LETTER));
    assertThat(all).noneMatch(l -> l.matches("w{40,}|m{60,}"));
    assertThat(all.stream().filter(l -> l.matches("w{10,40}")).mapToInt(String::length).sum())
        .isEqualTo(64);
  }
}
