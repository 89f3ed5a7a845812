package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import witnessmark.bench.Json;
import witnessmark.desk.CheckWrench;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Tried;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.OnDisk;
import witnessmark.torque.Torque;

/** What is said where a wrench of the unit was found out of tolerance after the work. */
class FoundWarningTest {
  private static final String WARNING =
      "TW-1 was found out of tolerance after this (entry 9); see recall TW-1\n";

  private record Said(int status, String out, String err) {}

  @TempDir private Path directory;

  private Said say(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err, true));
    return new Said(line.execute(arguments), out.toString(), err.toString());
  }

  private Said trace(String... more) {
    List<String> all =
        new java.util.ArrayList<>(List.of("trace", "--data", at("data"), "--unit", "ATR-26-0147"));
    all.addAll(List.of(more));
    return say(all.toArray(String[]::new));
  }

  private String at(String name) {
    return directory.resolve(name).toString();
  }

  private void begin(boolean check) {
    Bench bench = Bench.on(Bench.group(1));
    bench.hit("50 N.m");
    bench.person(new CloseJob(bench.jobName(), Optional.of("badge-07")));
    if (check) {
      Tried point = new Tried(Torque.parse("60 N.m"), List.of(Torque.parse("52 N.m")));
      bench.person(new CheckWrench("TW-1", "tester-1", List.of(point), "badge-07"));
    }
    OnDisk.read(directory.resolve("data"), bench.log(), r -> r.size());
  }

  @Test
  void theRecordWarnsOnStandardErrorAndCarriesTheCaution() {
    begin(true);
    Said text = trace("--record");
    assertThat(text.status()).isZero();
    assertThat(text.err()).isEqualTo(WARNING);
    assertThat(text.out()).contains("\n  CAUTION: TW-1 was found out of tolerance after this: ");
    Said json = trace("--record", "--json");
    assertThat(json.err()).isEqualTo(WARNING);
    JsonNode found = Json.of(json.out()).at("/jobs/0/foundOutOfTolerance");
    assertThat(found).hasSize(1);
    assertThat(found.at("/0/wrench").asText()).isEqualTo("TW-1");
    assertThat(found.at("/0/entry").asInt()).isEqualTo(9);
    assertThat(found.at("/0/standing").asInt()).isEqualTo(1);
  }

  @Test
  void theCertificateProvesTheCautionWithTheRest() {
    begin(true);
    Said written = trace("--certificate", at("c.pdf"));
    assertThat(written.status()).isZero();
    assertThat(written.err()).isEqualTo(WARNING);
    Said checked = say("ledger", "check-proof", at("c.pdf"), "--key", at("data/ledger.pub"));
    assertThat(checked.status()).as(checked.out()).isZero();
    assertThat(checked.out().replace("\n  ", " "))
        .startsWith("Proved: ")
        .contains("the file is the same to the byte")
        .contains("Caution: Job J-5: TW-1 was found out of tolerance after this: ");
    Said entries =
        say("ledger", "check-proof", at("c.pdf"), "--key", at("data/ledger.pub"), "--entries");
    assertThat(entries.out()).contains("\"kind\":\"calibration-ended\"");
  }

  @Test
  void withoutAFindingNothingIsSaid() {
    begin(false);
    assertThat(trace("--record").err()).isEmpty();
    assertThat(trace("--record").out()).doesNotContain("CAUTION");
    assertThat(trace("--certificate", at("c.pdf")).err()).isEmpty();
  }
}
