package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class ProofCommandsTest {
  private static final String TEXT =
      """
      [procedure]
      id = "RAM-210"
      revision = "C"
      title = "Rear-axle module"
      [[step]]
      id = "frame-check"
      kind = "attest"
      title = "Frame"
      statement = "The frame's seats are clean."
      """;

  @TempDir private Path directory;
  private String data;
  private String key;

  private record Said(int status, String out, String err) {}

  private static Said say(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err, true));
    return new Said(line.execute(arguments), out.toString(), err.toString());
  }

  private static Said done(String... arguments) {
    Said said = say(arguments);
    assertThat(said.status()).as(said.toString()).isZero();
    return said;
  }

  private String at(String name) {
    return directory.resolve(name).toString();
  }

  /** Entries: 0 log, 1 person, 2 procedure, 3 job J-3, 4 attested, 5 closed. */
  @BeforeEach
  void begin() throws IOException {
    data = "--data=" + at("data");
    done("ledger", "create", data);
    key =
        "--key=" + Files.copy(directory.resolve("data/ledger.pub"), directory.resolve("shop.pub"));
    done("operator", "enrol", "badge-07", data);
    String file = Files.writeString(directory.resolve("p.toml"), TEXT).toString();
    done("procedure", "release", file, "--by=badge-07", data);
    done(
        "job",
        "open",
        "--procedure=RAM-210",
        "--unit=ATR-26-0147",
        "--station=bench-1",
        "--by=badge-07",
        data);
    done("attest", "J-3", "frame-check", "--by=badge-07", data);
  }

  private String keep(String name) throws IOException {
    return Files.writeString(directory.resolve(name), done("ledger", "checkpoint", data).out())
        .toString();
  }

  private String[] checkpoint() {
    return done("ledger", "checkpoint", data).out().split("\n");
  }

  private void tamper(String... statements) throws Exception {
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + at("data/ledger.db"));
        Statement statement = db.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

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
      done("ledger", "prove", of, "--out", proof, data);
      JsonNode answer =
          new ObjectMapper().readTree(done("ledger", "check-proof", proof, key, "--json").out());
      assertThat(answer.at("/proved").asText()).isEqualTo("entries");
      assertThat(answer.at("/entries/0/entry").asInt()).isEqualTo(3);
      assertThat(answer.at("/entries/1/entry").asInt()).isEqualTo(4);
      assertThat(answer.at("/entries")).hasSize(2);
      assertThat(answer.at("/log").asText()).isEqualTo(checkpoint()[0]);
      assertThat(answer.at("/checkpoint/root").asText()).isEqualTo(checkpoint()[2]);
      assertThat(new String(answer.at("/entries/1/leaf").binaryValue()))
          .startsWith("{\"kind\":\"attested\"");
    }
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
                    + " cannot be written: there is no such file; name a place that can be\n"));
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
                "",
                pdf
                    + " is not a certificate as Witnessmark writes them: it does not begin as a certificate does; ask for the file as it was written.\n"));
    assertThat(say("ledger", "check-proof", pdf, "--key=" + pdf).status()).isEqualTo(3);
    assertThat(say("ledger", "check-proof", pdf).status()).isEqualTo(2);
  }

  @Test
  void whoeverKeptACheckpointIsToldThatTheLogGoesOn() throws IOException {
    String old = keep("old.txt");
    done("job", "close", "J-3", "--by=badge-07", data);
    String growth = at("growth.json");
    assertThat(done("ledger", "prove", "--since", old, "--out", growth, data).out())
        .startsWith("Wrote a consistency proof (JSON) to " + growth + ".\n");
    String said = done("ledger", "check-proof", growth, key).out();
    assertThat(said.replaceAll("\\s+", " "))
        .contains("goes on from its earlier checkpoint; the first 5 entries are the same. The ")
        .contains("The later checkpoint signs 6 entries with the root " + checkpoint()[2] + ".");
    JsonNode json =
        new ObjectMapper().readTree(done("ledger", "check-proof", growth, key, "--json").out());
    assertThat(json.at("/proved").asText()).isEqualTo("goes-on");
    assertThat(json.at("/old/size").asInt()).isEqualTo(5);
    assertThat(json.at("/new/size").asInt()).isEqualTo(6);
    assertThat(done("ledger", "verify", "--since", old, key, data).out())
        .startsWith("Verified: 6 entries, root ")
        .endsWith("\nThe first 5 are those that the kept checkpoint signs.\n");
  }

  /** Another history, signed with the log's own key. */
  private void rewrite() throws Exception {
    tamper(
        "DROP TRIGGER entry_goes_on",
        "DROP TRIGGER entry_stays",
        "DROP TRIGGER entry_remains",
        "DELETE FROM entry",
        "DELETE FROM trace",
        "DELETE FROM job",
        "DELETE FROM checkpoint");
    for (int i = 0; i < 6; i++) {
      done("operator", "enrol", "badge-" + (10 + i), data);
    }
  }

  @Test
  void whoeverKeptACheckpointIsToldThatHistoryWasRewritten() throws Exception {
    String old = keep("old.txt");
    rewrite();
    assertThat(done("ledger", "verify", data).out()).startsWith("Verified: 6 entries, root ");
    Said verify = say("ledger", "verify", "--since", old, data);
    assertThat(verify.status()).isEqualTo(1);
    assertThat(verify.out())
        .startsWith("the checkpoint that was kept: signs the root ")
        .contains(" over the first 5 entries, these make ", ": history was rewritten since\n")
        .contains("\nDOES NOT VERIFY: 6 entries, root ");
    Said prove = say("ledger", "prove", "--since", old, "--out=" + at("g"), data);
    assertThat(prove.status()).isEqualTo(1);
    assertThat(prove.err())
        .startsWith("History was rewritten: the earlier checkpoint signs the root ");
    assertThat(directory.resolve("g")).doesNotExist();
  }

  @Test
  void whoeverKeptACheckpointIsToldThatTheEndWasCutOff() throws Exception {
    done("job", "close", "J-3", "--by=badge-07", data);
    String old = keep("old.txt");
    tamper(
        "DROP TRIGGER entry_goes_on",
        "DROP TRIGGER entry_remains",
        "DELETE FROM entry",
        "DELETE FROM trace",
        "DELETE FROM job",
        "DELETE FROM checkpoint");
    done("operator", "enrol", "badge-10", data);
    assertThat(say("ledger", "verify", "--since", old, data).out())
        .startsWith(
            "the checkpoint that was kept: signs 6 entries, the log has 1: its end was cut off since\n");
    assertThat(say("ledger", "prove", "--since", old, "--out=" + at("g"), data))
        .isEqualTo(
            new Said(
                1,
                "",
                "History was rewritten: the earlier checkpoint signs 6 entries, the log has 1.\n"));
  }

  @Test
  void aCheckpointOfAnotherLogAndAFileThatIsNoneAreToldApart() throws IOException {
    String old = keep("old.txt");
    String other = "--data=" + at("other");
    done("ledger", "create", other);
    for (String[] command :
        new String[][] {
          {"ledger", "verify", "--since", old, other},
          {"ledger", "prove", "--since", old, "--out=" + at("g"), other}
        }) {
      Said said = say(command);
      assertThat(said.status()).isEqualTo(1);
      assertThat(said.err())
          .startsWith(old + " is no checkpoint of the log witnessmark.local/log/")
          .endsWith(".\nIf it came from here, the log or its key was replaced since.\n");
    }
    String none = Files.writeString(directory.resolve("none.txt"), "hello\n").toString();
    Said said = say("ledger", "verify", "--since", none, data);
    assertThat(said.status()).isEqualTo(3);
    assertThat(said.err()).endsWith(".\nName a file that ledger checkpoint printed.\n");
    assertThat(say("ledger", "verify", "--since", at("nowhere"), data).status()).isEqualTo(3);
  }

  @Test
  void noProofIsMadeOfAChangedLog() throws Exception {
    tamper("DROP TRIGGER entry_stays", "UPDATE entry SET bytes = x'00' WHERE n = 4");
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
