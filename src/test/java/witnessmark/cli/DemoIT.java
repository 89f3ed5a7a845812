package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Json;
import witnessmark.bench.Program;

class DemoIT {
  @TempDir private Path directory;

  @Test
  void twoDemosOfOneSeedTellTheSameStory() {
    Program program = new Program(directory);
    // at the same time, because each waits more than it works
    List<CompletableFuture<Program.Ended>> both =
        Stream.of("one", "two")
            .map(
                name ->
                    CompletableFuture.supplyAsync(
                        () -> program.run("demo", "--fast", "--seed", "1", "--keep", name)))
            .toList();
    CompletableFuture<Program.Ended> gone =
        CompletableFuture.supplyAsync(() -> program.run("demo", "--fast"));
    String out = both.get(0).join().orThrow();
    both.get(1).join().orThrow();
    assertThat(out)
        .contains("is below the band of")
        .contains("is above the band of")
        .contains("Nonconforming: stop here, somebody must decide (dispose).")
        .contains("the same message came twice: counted, nothing changed")
        .contains("badge-07 confirms frame-check: ")
        .contains("46 of 46 fastener passes stand")
        .contains("$ witnessmark ledger check-proof one/ATR-26-0147.pdf --key one/data/ledger.pub")
        .contains("The pages are what the entries make: the file is the same to the byte.")
        .contains("$ witnessmark ledger verify --data one/data\nVerified: ");
    assertThat(gone.join().orThrow())
        .as("nothing to type about data that are gone")
        .doesNotContain("--data")
        .doesNotContain("$ witnessmark")
        .contains("The log, checked:\nVerified: ")
        .endsWith(
            "The data of this demo are gone. To look around in them, run it with --keep DIR.\n");
    assertThat(program.run("trace", "--kind", "disposed", "--data", "one/data").orThrow().lines())
        .hasSize(3)
        .anyMatch(
            line ->
                line.contains(" cross-member/rear-left ")
                    && line.contains(" replace, decided as quality: overtightened: "))
        .anyMatch(
            line ->
                line.contains(" caliper/2 ")
                    && line.contains(" replace, decided as quality: may be used only once: "));
    List<String> story = story(program, "one/data");
    assertThat(story)
        .contains("torque cross-member/rear-left over-torque nonconforming")
        .contains("assigned caliper/2 - nonconforming")
        .anyMatch(line -> line.endsWith(" under-torque again"));
    assertThat(story(program, "two/data")).isEqualTo(story);
  }

  private static List<String> story(Program program, String data) {
    return program
        .run("trace", "--jsonl", "--data", data)
        .orThrow()
        .lines()
        .map(line -> Json.of(line).path("entry"))
        .map(DemoIT::told)
        .toList();
  }

  private static String told(JsonNode entry) {
    return Stream.of("kind", "fastener", "verdict", "effect")
        .map(name -> entry.path(name).asText("-"))
        .map(text -> text.isEmpty() ? "-" : text)
        .reduce((a, b) -> a + " " + b)
        .orElseThrow();
  }
}
