package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ProofCommandsTest extends ProofDesk {
  @Test
  void oneEntryMakesATlogProofThatIsCheckedWithoutTheLog() throws IOException {
    String[] checkpoint = checkpoint();
    String proof = at("entry-4.tlog-proof");
    assertThat(done("ledger", "prove", "4", "--out", proof, data).out())
        .isEqualTo(
            "Wrote the proof of entry 4 to %s.\nWhoever has a copy of %s can check it, without the log:\n  witnessmark ledger check-proof %s --key %s\n"
                .formatted(proof, at("data/ledger.pub"), proof, at("data/ledger.pub")));
    assertThat(Files.readString(Path.of(proof))).startsWith("c2sp.org/tlog-proof@v1\nextra ");
    Files.move(directory.resolve("data"), directory.resolve("gone"));
    assertThat(say("ledger", "check-proof", proof, key))
        .isEqualTo(
            new Said(
                0,
                "Proved: entry 4 of the log %s, byte for byte as recorded.\nIts checkpoint signs 5 entries with the root %s.\n"
                    .formatted(checkpoint[0], checkpoint[2]),
                ""));
    assertThat(done("ledger", "check-proof", proof, key, "--entries").out())
        .contains("\n{\"n\":4,\"entry\":{\"kind\":\"attested\",");
  }

  @Test
  void severalEntriesAJobOrAUnitMakeABundle() throws IOException {
    String several = at("several.json");
    assertThat(done("ledger", "prove", "0", "4", "1", "2", "--out", several, data).out())
        .startsWith("Wrote a proof bundle of 4 entries (JSON) to " + several + ".\n");
    assertThat(done("ledger", "check-proof", several, key).out().replace("\n", " "))
        .startsWith("Proved: 4 entries (0 to 2, 4) of the log ");
    for (String of : new String[] {"--job=J-3", "--unit=ATR-26-0147"}) {
      String proof = at("all.json");
      done("ledger", "prove", of, "--out", proof, "--force", data);
      JsonNode answer =
          new ObjectMapper().readTree(done("ledger", "check-proof", proof, key, "--json").out());
      assertThat(answer.at("/proved").asText()).isEqualTo("entries");
      // beside the job's own the person's enrolment and the procedure
      for (int i = 0; i < 4; i++) {
        assertThat(answer.at("/entries/" + i + "/entry").asInt()).isEqualTo(i + 1);
      }
      assertThat(answer.at("/entries")).hasSize(4);
      assertThat(answer.at("/log").asText()).isEqualTo(checkpoint()[0]);
      assertThat(answer.at("/checkpoint/root").asText()).isEqualTo(checkpoint()[2]);
      assertThat(new String(answer.at("/entries/3/leaf").binaryValue()))
          .startsWith("{\"kind\":\"attested\"");
    }
  }

  @Test
  void anEntryLeftOutOfAJobIsNoticedWhereItsEndIsThere() throws IOException {
    done("job", "close", "J-3", "--by=badge-07", data);
    Path proof = directory.resolve("job.json");
    done("ledger", "prove", "--job=J-3", "--out=" + proof, data);
    assertThat(done("ledger", "check-proof", proof.toString(), key).out())
        .startsWith("Proved: 5 entries (1 to 5) of the log ")
        .endsWith("\nJob J-3: all 3 entries up to its end are here, scans aside.\n");

    Files.writeString(proof, without(proof, 3));
    Said said = say("ledger", "check-proof", proof.toString(), key);
    assertThat(said.status()).isEqualTo(1);
    assertThat(said.out())
        .startsWith(
            "ENTRIES ARE MISSING: 3 entries belong to job J-3 up to its end, 2 are here.\n"
                + "What is proved: 4 entries (1 to 3, 5) of the log ")
        .endsWith(
            "\nWhat is left out may be a reading, a nonconformity or a decision. Ask for all entries: trace\n"
                + "--certificate, or ledger prove --job.\n");
    JsonNode answer =
        new ObjectMapper()
            .readTree(say("ledger", "check-proof", proof.toString(), key, "--json").out());
    assertThat(answer.at("/verdict").asText()).isEqualTo("entries-missing");
    assertThat(answer.at("/jobs/0/belong").asInt()).isEqualTo(3);
    assertThat(answer.at("/jobs/0/here").asInt()).isEqualTo(2);
    assertThat(answer.at("/jobs/0/whole").asBoolean(true)).isFalse();

    done("ledger", "prove", "--job=J-3", "--out=" + proof, "--force", data);
    Files.writeString(proof, without(proof, 4));
    assertThat(done("ledger", "check-proof", proof.toString(), key).out())
        .as("without its end")
        .endsWith(
            "\nJob J-3: its end is not here: that none of its entries was left out is not shown.\n");
  }

  private static String without(Path bundle, int entry) throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    JsonNode whole = mapper.readTree(bundle.toFile());
    ((com.fasterxml.jackson.databind.node.ArrayNode) whole.path("entries")).remove(entry);
    return mapper.writeValueAsString(whole);
  }

  @Test
  void whatIsNotThereIsNotProved() {
    String out = "--out=" + at("x");
    assertThat(say("ledger", "prove", "5", out, data))
        .isEqualTo(new Said(1, "", "There is no entry 5; the log has the entries 0 to 4.\n"));
    assertThat(say("ledger", "prove", "--job=J-9", out, data).status()).isEqualTo(1);
    assertThat(say("ledger", "prove", "--unit=ATR-26-9999", out, data).status()).isEqualTo(1);
    assertThat(say("ledger", "prove", "four", out, data).status()).isEqualTo(2);
    assertThat(say("ledger", "prove", out, data).status()).isEqualTo(2);
    assertThat(say("ledger", "prove", "4", "--job=J-3", out, data).status()).isEqualTo(2);
    assertThat(directory.resolve("x")).doesNotExist();
    assertThat(say("ledger", "prove", "4", "--out=" + at("no/where"), data))
        .isEqualTo(
            new Said(
                4,
                "",
                at("no/where")
                    + " cannot be written: there is no directory "
                    + at("no")
                    + "; name a place that can be\n"));
  }

  @Test
  void aChangedProofProvesNothing() throws IOException {
    Path proof = directory.resolve("entry-4.tlog-proof");
    done("ledger", "prove", "4", "--out=" + proof, data);
    String good = Files.readString(proof);
    Files.writeString(proof, good.replace("index 4", "index 3"));
    assertThat(say("ledger", "check-proof", proof.toString(), key))
        .isEqualTo(
            new Said(
                1, "NOTHING IS PROVED:\n  entry 3: its path is too short for a tree of 5.\n", ""));
    Said said = say("ledger", "check-proof", proof.toString(), key, "--json");
    JsonNode answer = new ObjectMapper().readTree(said.out());
    assertThat(said.status()).isEqualTo(1);
    assertThat(answer.at("/proved").asText()).isEqualTo("nothing");
    assertThat(answer.at("/faults/0").asText())
        .isEqualTo("entry 3: its path is too short for a tree of 5");
  }

  @Test
  void filesThatCannotBeReadAndPdfDocumentsAreToldApart() throws IOException {
    assertThat(say("ledger", "check-proof", at("none"), key))
        .isEqualTo(
            new Said(
                3,
                "",
                at("none") + " cannot be read: there is no such file; name a readable file\n"));
    String pdf = Files.writeString(directory.resolve("c.pdf"), "%PDF-1.7\n").toString();
    assertThat(say("ledger", "check-proof", pdf, key))
        .isEqualTo(
            new Said(
                1,
                """
                NOTHING IS PROVED:
                  this PDF is not a certificate as it was written. Another program saved, printed, signed or stamped
                  it since, or it never was one. Ask the shop for the original file, and do not save it anew.
                  found: it does not begin as a certificate does.
                """,
                ""));
    JsonNode answer =
        new ObjectMapper().readTree(say("ledger", "check-proof", pdf, key, "--json").out());
    assertThat(answer.at("/proved").asText()).isEqualTo("nothing");
    assertThat(answer.at("/verdict").asText()).isEqualTo("nothing");
    assertThat(answer.at("/faults/1").asText())
        .isEqualTo("found: it does not begin as a certificate does");
    assertThat(say("ledger", "check-proof", pdf, "--key=" + pdf).status()).isEqualTo(3);
    assertThat(say("ledger", "check-proof", pdf).status()).isEqualTo(2);
  }

  @Test
  void noProofIsMadeOfAChangedLog() throws Exception {
    tamper("UPDATE entry SET bytes = x'00' WHERE n = 4");
    Said said = say("ledger", "prove", "2", "--out=" + at("x"), data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err()).startsWith("The log is not as it was signed: its checkpoint signs the");
    assertThat(directory.resolve("x")).doesNotExist();
  }

  @Test
  void noProofIsWrittenThatTheKeyWouldNotCheck() throws IOException {
    done("ledger", "create", "--data=" + at("other"));
    Path other = directory.resolve("other/ledger.pub");
    Said said = say("ledger", "prove", "2", "--out=" + at("x"), "--key=" + other, data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .startsWith("No proof is written: it would not check: the checkpoint: its origin is ");
  }
}
