package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.certificate.Sameness.Kind;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;

/** A certificate is what its entries make, and whatever is changed about it shows. */
class SamenessTest {
  private static final String PROGRAM = Cases.PROGRAM;

  @TempDir private static Path directory;

  private static Proved proved;
  private static byte[] pdf;

  @BeforeAll
  static void write() {
    proved =
        Cases.proved(
            directory.resolve("log"), Cases.closed(5, Cases.UNIT, "Rear-axle module"), Cases.UNIT);
    pdf = Certificate.render(proved, Paper.LETTER, PROGRAM);
  }

  private interface Change {
    void on(PDDocument document) throws IOException;
  }

  /** The same document with something changed, as PDFBox writes it anew. */
  private static byte[] changed(Change change) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      document.setDocumentId(1L);
      change.on(document);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out, CompressParameters.NO_COMPRESSION);
      return out.toByteArray();
    }
  }

  private static Sameness same(byte[] file) {
    return Sameness.of(file, proved, PROGRAM);
  }

  /** The same parts with one stream changed, in the form that certificates are written in. */
  private static byte[] rewritten(byte[] file, int level, String from, String to) throws Exception {
    return Rewrite.of(Written.of(file), level, from, to);
  }

  @Test
  void aCertificateAsWrittenIsTheSameToTheByte() {
    assertThat(same(pdf)).isEqualTo(new Sameness(Kind.BYTES, List.of()));
    CertificateCheck check = CertificateCheck.of(pdf, proved, PROGRAM);
    assertThat(check.faults()).isEmpty();
    assertThat(check.shown())
        .containsExactly(
            "The pages are what the entries make: the file is the same to the byte.",
            "Job J-6: All 10 entries of the job up to its end are here, scans aside.");
  }

  @Test
  void whoIssuesItIsDrawnAgainAndSaidToBeNoPartOfTheRecord() throws Exception {
    Parties parties =
        new Parties(Optional.of("Frame & axle <shop>, bench street 1"), Optional.of("Модуль"));
    byte[] named = Certificate.render(proved, Paper.A4, PROGRAM, parties);
    assertThat(CertificateFile.read(named).parties()).isEqualTo(parties);
    CertificateCheck check = CertificateCheck.of(named, proved, PROGRAM);
    assertThat(check.sameness().kind()).isEqualTo(Kind.BYTES);
    String told =
        "Not part of the record, named by whoever made this file: issuer: Frame & axle <shop>, bench"
            + " street 1; for: Модуль.";
    assertThat(check.shown()).endsWith(told);
    assertThat(String.join(" ", PageTexts.read(named).get(0))).contains(told);
    byte[] other = rewritten(named, 9, "bench street 1", "bench street 2");
    assertThat(same(other).kind()).as("the name in the file alone").isEqualTo(Kind.DIFFERENT);
  }

  @Test
  void namesOfSeveralLinesOrWithUnseenCharactersAreRefused() {
    for (String text : List.of("", " ", "a\nb", "a\u202eb", "x".repeat(201))) {
      assertThatThrownBy(() -> new Parties(Optional.of(text), Optional.empty()))
          .as(text)
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageStartingWith("the issuer ");
    }
  }

  @Test
  void anotherCompressionOfTheSameIsTheSame() throws Exception {
    byte[] other = rewritten(pdf, 1, "", "");
    assertThat(other).isNotEqualTo(pdf);
    assertThat(same(other)).isEqualTo(new Sameness(Kind.CONTENT, List.of()));
  }

  @Test
  void aMarkMovedOnThePageShows() throws Exception {
    byte[] other = rewritten(pdf, 9, "0.1 0.12 0.14 rg", "0.1 0.12 0.15 rg");
    assertThat(same(other).kind()).isEqualTo(Kind.DIFFERENT);
    assertThat(same(other).differences()).contains("page 1 is not what the entries make");
  }

  @Test
  void aFigureWrittenOverAnotherShows() throws IOException {
    byte[] other =
        changed(
            d -> {
              PDPage page = d.getPage(0);
              try (PDPageContentStream over =
                  new PDPageContentStream(d, page, AppendMode.APPEND, true)) {
                over.setNonStrokingColor(1f, 1f, 1f);
                over.addRect(100, 400, 80, 10);
                over.fill();
              }
            });
    assertThatThrownBy(() -> same(other)).hasMessageStartingWith("not a certificate as");
  }

  @Test
  void anExtraPageShows() throws IOException {
    assertRevealed(changed(d -> d.addPage(new PDPage())));
  }

  @Test
  void aNoteAScriptAndAnotherAttachmentShow() throws IOException {
    assertRevealed(changed(d -> d.getPage(0).setAnnotations(List.of(new PDAnnotationText()))));
    assertRevealed(
        changed(
            d -> d.getDocumentCatalog().setOpenAction(new PDActionJavaScript("app.alert('x')"))));
    assertRevealed(
        changed(
            d -> {
              PDStream more = new PDStream(d, new ByteArrayInputStream(new byte[3]));
              more.getCOSObject().setName(COSName.TYPE, "EmbeddedFile");
              d.getDocumentCatalog().getCOSObject().setItem("More", more);
            }));
  }

  /** Either not of the form at all, or unlike what the entries make. */
  private static void assertRevealed(byte[] other) {
    CertificateCheck check;
    try {
      check = CertificateCheck.of(other, proved, PROGRAM);
      CertificateFile.read(other);
    } catch (IllegalArgumentException e) {
      assertThat(e).hasMessageStartingWith("not a certificate as Witnessmark writes them: ");
      return;
    }
    assertThat(check.holds()).isFalse();
    assertThat(check.sameness().kind()).isEqualTo(Kind.DIFFERENT);
  }

  @Test
  void whatIsWrittenAfterTheEndOrBesideTheObjectsShows() {
    assertThatThrownBy(() -> CertificateFile.read(concat(pdf, "\n% more\n")))
        .hasMessage(
            "not a certificate as Witnessmark writes them: there is more in it than its objects, or it"
                + " was written on; ask for the file as it was written");
    assertThatThrownBy(() -> CertificateFile.read("%PDF-1.7\n".getBytes(StandardCharsets.US_ASCII)))
        .hasMessageContaining("it does not begin as a certificate does");
  }

  private static byte[] concat(byte[] file, String more) {
    byte[] tail = more.getBytes(StandardCharsets.US_ASCII);
    byte[] all = java.util.Arrays.copyOf(file, file.length + tail.length);
    System.arraycopy(tail, 0, all, file.length, tail.length);
    return all;
  }

  @Test
  void anAttachmentOfOtherEntriesDoesNotMakeThesePages() {
    Proved other =
        Cases.proved(
            directory.resolve("other"),
            Cases.closed(6, Cases.UNIT, "Rear-axle module"),
            Cases.UNIT);
    Sameness sameness = Sameness.of(pdf, other, PROGRAM);
    assertThat(sameness.kind()).isEqualTo(Kind.DIFFERENT);
    assertThat(sameness.differences())
        .anyMatch(d -> d.contains("does not say, and the entries do"));
  }

  @Test
  void anEntryThatWasLeftOutShowsThoughThePagesAreMadeWithoutIt() {
    SortedMap<Long, byte[]> less = new TreeMap<>(proved.entries());
    long under =
        less.entrySet().stream()
            .filter(
                e ->
                    EntryJson.read(e.getValue()) instanceof Entry.TorqueTaken t
                        && t.judged().effect() == witnessmark.entry.Effect.AGAIN)
            .findFirst()
            .orElseThrow()
            .getKey();
    less.remove(under);
    Proved lacking = Proved.of(less, proved.bundle());
    byte[] file = Certificate.render(lacking, Paper.A4, PROGRAM);
    CertificateCheck check = CertificateCheck.of(file, lacking, PROGRAM);
    assertThat(check.sameness().kind()).isEqualTo(Kind.BYTES);
    assertThat(check.faults())
        .containsExactly("Job J-6: ENTRIES ARE MISSING: the job's end counts 10, and 9 are here.");
  }

  @Test
  void ofAnotherVersionsFileTheTextIsComparedAndThatIsSaid() throws Exception {
    byte[] older = Certificate.render(proved, Paper.A4, "Witnessmark 0.0.9");
    assertThat(Sameness.of(older, proved, PROGRAM).kind()).isEqualTo(Kind.BYTES);
    byte[] drawnOtherwise = rewritten(older, 9, "0.1 0.12 0.14 rg", "0.2 0.2 0.2 rg");
    CertificateCheck check = CertificateCheck.of(drawnOtherwise, proved, PROGRAM);
    assertThat(check.sameness().kind()).isEqualTo(Kind.TEXT);
    assertThat(check.holds()).isFalse();
    assertThat(check.faults().get(0))
        .startsWith("NOT SHOWN IN FULL: the text of the pages is what the entries make")
        .contains("Witnessmark 0.0.9 wrote the file and Witnessmark test draws it otherwise.");
  }

  @Test
  void anyByteChangedShowsOrIsTheSameContent() {
    long seed = 11;
    Random random = new Random(seed);
    for (int i = 0; i < 120; i++) {
      byte[] torn = pdf.clone();
      int at = random.nextInt(torn.length);
      torn[at] ^= (byte) (1 << random.nextInt(8));
      String where = "seed " + seed + ", run " + i + ", byte " + at;
      try {
        byte[] bundle = CertificateFile.read(torn).bundle();
        if (java.util.Arrays.equals(bundle, proved.bundle())) {
          assertThat(Sameness.of(torn, proved, PROGRAM).kind()).as(where).isNotEqualTo(Kind.BYTES);
        }
      } catch (IllegalArgumentException e) {
        assertThat(e.getMessage()).as(where).startsWith("not a certificate");
      }
    }
  }

  @Test
  void anInflatingStreamIsStopped() throws Exception {
    byte[] bomb = new byte[Written.MOST + 10];
    byte[] file = Rewrite.with(Written.of(pdf), bomb);
    assertThat(file.length).isLessThan(1 << 20);
    assertThatThrownBy(() -> CertificateFile.read(file))
        .hasMessageContaining("its streams hold more than");
  }
}
