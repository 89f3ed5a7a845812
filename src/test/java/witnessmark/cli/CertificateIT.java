package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Json;
import witnessmark.bench.Program;

/** The record and the certificate of a unit, by the real program. */
class CertificateIT {
  private static final String UNIT = "ATR-26-0147";

  @TempDir private static Path directory;

  private static Program program;

  @BeforeAll
  static void assemble() {
    program = new Program(directory);
    program.run("demo", "--fast", "--seed", "1", "--keep", "demo").orThrow();
  }

  private static Program.Ended trace(String... more) {
    String[] all = new String[5 + more.length];
    all[0] = "trace";
    all[1] = "--data";
    all[2] = "demo/data";
    all[3] = "--unit";
    all[4] = UNIT;
    System.arraycopy(more, 0, all, 5, more.length);
    return program.run(all);
  }

  @Test
  void theRecordIsThereForPeopleAndForPrograms() {
    assertThat(trace("--record").orThrow())
        .startsWith("UNIT " + UNIT + "\n\nJOB J-6 closed, RAM-210 revision C, Rear-axle module\n")
        .contains("\n  46 of 46 fastener passes stand; 5 of 5 confirmations")
        .contains("replace by badge-11 as quality: overtightened: new bolt fitted")
        .endsWith("MISSING\n  none\n");
    JsonNode job = Json.of(trace("--record", "--json").orThrow()).path("jobs").path(0);
    assertThat(job.path("outcome").asText()).isEqualTo("closed");
    assertThat(job.path("whole").asBoolean()).isTrue();
    assertThat(job.path("passes")).hasSize(46);
    assertThat(job.path("nonconformities")).hasSize(2);
    assertThat(trace("--record", "--csv").status()).isEqualTo(2);
    assertThat(program.run("trace", "--data", "demo/data", "--unit", "X", "--record").status())
        .isEqualTo(1);
  }

  @Test
  void aCertificateIsWrittenOnceAndHoldsWithTheKeyAlone() throws Exception {
    assertThat(trace("--certificate", "c.pdf", "--paper", "letter").orThrow())
        .startsWith("Wrote c.pdf: unit ATR-26-0147, 1 job, ");
    assertThat(trace("--certificate", "c.pdf"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(4),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "c.pdf exists already; name a new file, or replace it with --force.\n"));
    trace("--certificate", "c.pdf", "--force").orThrow();
    assertThat(trace("--certificate", "d.pdf", "--paper", "A3").status()).isEqualTo(2);
    assertThat(check("c.pdf").orThrow())
        .startsWith("Proved: ")
        .contains("The pages are what the entries make: the file is the same to the byte.")
        .contains("Job J-6: All ");
    assertThat(qpdf("c.pdf")).isZero();
    assertThat(qpdf("demo/data/ledger.pub")).as("what is no PDF").isNotZero();
  }

  @Test
  void anAlteredCertificateDoesNotHold() throws IOException {
    trace("--certificate", "e.pdf").orThrow();
    byte[] pdf = Files.readAllBytes(directory.resolve("e.pdf"));
    String text = new String(pdf, java.nio.charset.StandardCharsets.ISO_8859_1);
    int leaf = text.indexOf("\"leaf\":\"") + 40;
    byte[] altered = pdf.clone();
    altered[leaf] = (byte) (altered[leaf] == 'A' ? 'B' : 'A');
    Files.write(directory.resolve("leaf.pdf"), altered);
    assertThat(check("leaf.pdf"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e -> assertThat(e.out()).startsWith("NOTHING IS PROVED:"));
    int box = text.indexOf("/MediaBox [0.0 0.0 5") + 19;
    byte[] resized = pdf.clone();
    resized[box] = '4';
    Files.write(directory.resolve("page.pdf"), resized);
    assertThat(check("page.pdf"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e ->
                assertThat(e.out())
                    .startsWith(
                        "NOT AS RECORDED: the pages differ from what the proved entries make.\n")
                    .doesNotContain("are here"));
  }

  @Test
  void ofAnOpenJobThereIsADraftOnly() {
    program
        .run(
            "job",
            "open",
            "--procedure",
            "RAM-210",
            "--unit",
            "ATR-26-0199",
            "--station",
            "bench-1",
            "--data",
            "demo/data")
        .orThrow();
    Program.Ended refused =
        program.run(
            "trace", "--unit", "ATR-26-0199", "--certificate", "f.pdf", "--data", "demo/data");
    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.err()).contains("is open: a certificate is of jobs that have ended.");
    program
        .run(
            "trace",
            "--unit",
            "ATR-26-0199",
            "--certificate",
            "f.pdf",
            "--draft",
            "--data",
            "demo/data")
        .orThrow();
    assertThat(check("f.pdf").orThrow()).contains("The job has not ended");
  }

  private static Program.Ended check(String file) {
    return program.run("ledger", "check-proof", file, "--key", "demo/data/ledger.pub");
  }

  private static int qpdf(String file) throws IOException, InterruptedException {
    Process qpdf =
        new ProcessBuilder("qpdf", "--check", file)
            .directory(directory.toFile())
            .redirectErrorStream(true)
            .redirectOutput(directory.resolve("qpdf.txt").toFile())
            .start();
    assertThat(qpdf.waitFor(30, TimeUnit.SECONDS)).isTrue();
    return qpdf.exitValue();
  }
}
