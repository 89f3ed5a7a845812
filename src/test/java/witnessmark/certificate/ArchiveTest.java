package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import witnessmark.pipeline.Bench;

/** Certificates are PDF/A-3b by the rules of veraPDF, the PDF Association's validator. */
class ArchiveTest {
  @TempDir private Path directory;

  @BeforeAll
  static void initialise() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  private static List<String> faults(byte[] pdf) throws Exception {
    try (PDFAParser parser =
            Foundries.defaultInstance()
                .createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_B);
        PDFAValidator validator =
            Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_B, false)) {
      ValidationResult result = validator.validate(parser);
      assertThat(result.getTotalAssertions()).as("rules that were looked at").isGreaterThan(500);
      List<String> faults =
          result.getTestAssertions().stream()
              .filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
              .map(a -> a.getRuleId().getClause() + " " + a.getMessage())
              .distinct()
              .collect(Collectors.toList());
      assertThat(result.isCompliant()).isEqualTo(faults.isEmpty());
      return faults;
    }
  }

  private byte[] written(Bench bench, String unit, Paper paper) {
    Proved proved = Cases.proved(directory.resolve("log"), bench, unit);
    return Certificate.render(proved, paper, Cases.PROGRAM);
  }

  @Test
  void aCertificateIsAnArchiveFile() throws Exception {
    assertThat(faults(written(Cases.closed(30, Cases.UNIT, "Module"), Cases.UNIT, Paper.A4)))
        .isEmpty();
  }

  @Test
  void soIsADraftOnLetterInManyScripts() throws Exception {
    String unit = "ATR <&> \"26\" Ж Ω 中 ﷽";
    assertThat(faults(written(Cases.begun(3, unit, "Modul, Μονάδα, Модуль"), unit, Paper.LETTER)))
        .isEmpty();
  }

  @Test
  void soIsOneThatNamesWhoIssuesItAndForWhom() throws Exception {
    Proved proved =
        Cases.proved(directory.resolve("log"), Cases.closed(1, Cases.UNIT, "Module"), Cases.UNIT);
    Parties parties = new Parties(Optional.of("A & <B>, Ж"), Optional.of("\"C\""));
    assertThat(faults(Certificate.render(proved, Paper.A4, Cases.PROGRAM, parties))).isEmpty();
  }

  @Test
  void theValidatorSeesWhatIsNoArchiveFile() throws Exception {
    byte[] pdf = written(Cases.closed(1, Cases.UNIT, "Module"), Cases.UNIT, Paper.A4);
    byte[] other = Rewrite.of(Written.of(pdf), 9, "<pdfaid:part>3", "<pdfaid:part>9");
    assertThat(faults(other)).isNotEmpty();
  }
}
