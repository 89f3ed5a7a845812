package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import witnessmark.bench.Json;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.OnDisk;
import witnessmark.sample.Worked;

/** The command on real logs, which real decisions filled. */
class CapabilityCommandTest {
  private record Ended(int status, String out, String err) {}

  @TempDir private Path directory;

  private Ended run(Bench bench, String... arguments) {
    OnDisk.read(directory.resolve("data"), bench.log(), r -> r.size());
    return run(arguments);
  }

  private Ended run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err, true));
    int status =
        line.execute(
            Stream.concat(
                    Stream.of("capability", "--data", directory.resolve("data").toString()),
                    Stream.of(arguments))
                .toArray(String[]::new));
    return new Ended(status, out.toString(), err.toString());
  }

  @Test
  void fortyStableValues() {
    Ended ended = run(Worked.jobs(40, 1, i -> 0), "--group", "a");
    assertThat(ended.status()).as(ended.err()).isZero();
    assertThat(ended.out())
        .isEqualTo(
            """
            P-1 revision A, a, final pass
              asked for: group a
              band                    45 to 55 N.m
              values                  40, 2026-11-25
              mean                    49.92 N.m
              smallest, largest       47.64 to 52.48 N.m
              s, of all values        1.08 N.m
              sigma, value to value   0.94 N.m (mean moving range 1.06 / 1.128)
              control limits          47.12 to 52.73 N.m
              Cp                      1.78 (95 %: 1.28 to 2.29)
              Cpk                     1.75 (95 %: 1.24 to 2.26)
              Pp                      1.55 (95 %: 1.21 to 1.89)
              Ppk                     1.52 (95 %: 1.17 to 1.88)
              run rules               1 alarm; chance alone gives about 0.4
              normality               Anderson-Darling 0.32, p 0.53
              right at the first try  40 of 40, 100.0 % (95 %: 91.2 to 100.0 %)
              tries below the band    0 of 40, 0.0 % (95 %: 0.0 to 8.8 %)
              tries above the band    0 of 40, 0.0 % (95 %: 0.0 to 8.8 %)

              POINT  ENTRY  UNIT         FASTENER  TORQUE
              31     50     ATR-26-0107  a/3       48.68 N.m  rule 3
              rule 3: 4 of 5 points in a row more than 1 sigma off on one side

            40 values are few: look at the intervals. About 50 are asked for, and 100 or more for a study.
            The run rules raise 1 alarm; a stable process of 40 values gives about 0.4. Look at the points
              marked all the same.
            1 moving range is above its limit, at point 12; of those of a stable process about 1 in 100 is.

            Torque is not clamp load: the figures say how evenly torque was applied, and nothing of the preload.
              They do not make a joint safe, and never say what torque to use.
            The spread is that of fasteners, hands and wrench together.
            """);
  }

  @Test
  void fewOrUnstableValuesHaveNoIndexAndSayWhy() {
    Ended few = run(Worked.jobs(5, 1, i -> 0), "--fastener", "a/1");
    assertThat(few.status()).isEqualTo(1);
    assertThat(few.out())
        .contains("There are 2 values; with fewer than 30 an index says more about")
        .contains("asked for: fastener a/1")
        .doesNotContain("Cpk");
  }

  @Test
  void anUnstableProcessHasNoIndex() {
    Ended ended = run(Worked.jobs(100, 0.8, i -> i < 50 ? -1 : 1.2), "--group", "a", "--json");
    assertThat(ended.status()).isEqualTo(1);
    JsonNode study = Json.of(ended.out()).path("studies").get(0);
    assertThat(study.path("n").intValue()).isEqualTo(100);
    assertThat(study.path("stability").path("stable").booleanValue()).isFalse();
    assertThat(study.path("withheld").get(0).textValue()).startsWith("The process was not stable");
    assertThat(study.has("within")).isFalse();
    assertThat(study.path("values")).hasSize(100);
    assertThat(study.path("values").get(7).path("rules").get(0).intValue()).isEqualTo(3);
  }

  @Test
  void jsonHasTheFiguresUnrounded() {
    Ended ended = run(Worked.jobs(40, 1, i -> 0), "--wrench", "TW-1", "--json");
    JsonNode study = Json.of(ended.out()).path("studies").get(0);
    double s = study.path("s").doubleValue();
    assertThat(study.path("overall").path("pp").doubleValue()).isEqualTo(10 / (6 * s));
    assertThat(study.path("overall").path("ppInterval")).hasSize(2);
    assertThat(study.path("low").textValue()).isEqualTo("45 N.m");
    assertThat(study.path("tries").path("firstTry").path("count").intValue()).isEqualTo(40);
  }

  @Test
  void thePagesAreWritten() throws IOException {
    Path svg = directory.resolve("a.svg");
    Path pdf = directory.resolve("a.pdf");
    Ended ended =
        run(
            Worked.jobs(40, 1, i -> 0),
            "--group",
            "a",
            "--svg",
            svg.toString(),
            "--pdf",
            pdf.toString());
    assertThat(ended.status()).as(ended.err()).isZero();
    assertThat(ended.out()).endsWith("Wrote " + svg + ".\nWrote " + pdf + ".\n");
    assertThat(Files.readString(svg)).contains("<svg", "Torque study", "Ppk", "sans-serif");
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      assertThat(new PDFTextStripper().getText(document))
          .contains("P-1 revision A, a, final pass", "1.52 (95 %: 1.17 to 1.88)")
          .contains("Torque is not clamp load");
    }
    byte[] first = Files.readAllBytes(pdf);
    Ended kept = run("--group", "a", "--pdf", pdf.toString());
    assertThat(kept.status()).isEqualTo(4);
    assertThat(kept.err())
        .isEqualTo(pdf + " exists already; name a new file, or replace it with --force.\n");
    Files.write(pdf, new byte[1]);
    Ended json = run("--group", "a", "--json", "--pdf", pdf.toString(), "--force");
    assertThat(json.err()).endsWith("Wrote " + pdf + ".\n");
    assertThat(Json.of(json.out()).path("studies")).hasSize(1);
    assertThat(Files.readAllBytes(pdf)).as("the same again").isEqualTo(first);
  }

  @Test
  void aDrawingIsOfOneStudy() {
    Bench bench = Bench.on(Bench.group(1) + Bench.step("b", 1));
    bench.hit("50 N.m");
    bench.hit("51 N.m");
    Ended ended = run(bench, "--wrench", "TW-1", "--svg", directory.resolve("x.svg").toString());
    assertThat(ended.status()).isEqualTo(2);
    assertThat(ended.err())
        .isEqualTo(
            """
            --svg draws one study, and there are 2. Narrow it down with --group, --procedure, --revision or --pass, or take --pdf:
              P-1 revision A, a, final pass, 45 to 55 N.m
              P-1 revision A, b, final pass, 45 to 55 N.m
            """);
  }

  @Test
  void whatIsNotOnRecordIsSaid() {
    Ended ended = run(Worked.jobs(1, 1, i -> 0), "--group", "b");
    assertThat(ended.status()).isEqualTo(1);
    assertThat(ended.err())
        .isEqualTo(
            "Nothing on record matches.\n"
                + "No step \"b\" is in a released procedure; did you mean \"a\"?\n");
  }

  @Test
  void somethingMustBeNamed() {
    Ended ended = run("--pass", "final");
    assertThat(ended.status()).isEqualTo(2);
    assertThat(ended.err())
        .startsWith("name what to look at: --fastener, --group, --wrench or --operator\n");
    assertThat(run("--group", "a", "--from", "yesterday").err())
        .startsWith("\"yesterday\" is no date or time; write 2026-11-25 or ");
  }
}
