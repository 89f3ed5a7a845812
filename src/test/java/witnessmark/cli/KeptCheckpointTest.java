package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class KeptCheckpointTest extends ProofDesk {
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
    tamper("DELETE FROM entry", "DELETE FROM trace", "DELETE FROM job", "DELETE FROM checkpoint");
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
    tamper("DELETE FROM entry", "DELETE FROM trace", "DELETE FROM job", "DELETE FROM checkpoint");
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
  void whatIsNoCheckpointInADirectoryIsLeftOutAndSaid() throws Exception {
    Path drop = Files.createDirectory(directory.resolve("drop"));
    Files.writeString(drop.resolve("README"), "what lies here\n");
    Files.write(drop.resolve("empty.txt"), new byte[0]);
    Files.write(drop.resolve("photo.jpg"), new byte[] {(byte) 0xff, (byte) 0xd8, 0, 10, 10, 10});
    Files.writeString(drop.resolve(".hidden"), "half");
    Said none = say("ledger", "verify", "--since", drop.toString(), data);
    assertThat(none)
        .isEqualTo(
            new Said(
                3,
                "",
                drop
                    + " holds no checkpoint to compare with; name another directory, or a file.\n"));
    keep("drop/checkpoint-000000000005.txt");
    done("job", "close", "J-3", "--by=badge-07", data);
    keep("drop/monday");
    String left = "Left out, being no checkpoints: README, empty.txt, photo.jpg.\n";
    assertThat(done("ledger", "verify", "--since", drop.toString(), data).out())
        .startsWith("Verified: 6 entries, root ")
        .endsWith("\nThey go on from all 2 kept checkpoints, which sign 5 to 6 entries.\n" + left);
    rewrite();
    assertThat(say("ledger", "verify", "--since", drop.toString(), data).out())
        .startsWith("the checkpoint that was kept in " + drop + "/checkpoint-000000000005.txt: ")
        .contains("; 1 more that sign as much or more stand after\n")
        .contains(left);
  }

  @Test
  void theFileThatIsCalledACheckpointAndIsNoneIsNamed() throws IOException {
    Path drop = Files.createDirectory(directory.resolve("drop"));
    keep("drop/checkpoint-000000000005.txt");
    Path empty = Files.createFile(drop.resolve("checkpoint-000000000006.txt"));
    Said said = say("ledger", "verify", "--since", drop.toString(), data);
    assertThat(said.status()).isEqualTo(3);
    assertThat(said.err())
        .startsWith(empty + " is no checkpoint of the log witnessmark.local/log/")
        .endsWith(".\nMove it out of " + drop + ", and keep it.\n");
  }
}
