package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;

class RotateKeyTest extends ProofDesk {
  private static final String ANEW =
      "Backups made before need the old private key to be gone on from. Make a new one now:"
          + " witnessmark ledger backup\n";

  private String rotate(String... more) {
    String[] command = new String[3 + more.length];
    System.arraycopy(new String[] {"ledger", "rotate-key", data}, 0, command, 0, 3);
    System.arraycopy(more, 0, command, 3, more.length);
    return done(command).out();
  }

  private String fresh() throws IOException {
    return Files.readString(directory.resolve("data/ledger.pub")).strip();
  }

  @Test
  void theLogGoesOnUnderTheNewKeyAndTheOldOneStillChecksIt() throws IOException {
    String old = Files.readString(directory.resolve("shop.pub")).strip();
    String before = keep("before.txt");
    assertThat(rotate())
        .startsWith("The log's key was changed at entry 5; the new one signs from there on.\n")
        .contains("\n  " + fresh() + "\n")
        .endsWith(
            "The old private key was overwritten. Destroy the copies of it in backups as well.\n"
                + ANEW);
    assertThat(fresh()).isNotEqualTo(old);
    done("job", "close", "J-3", "--by=badge-07", data);
    String step =
        "\nIts key was changed at entry 5: the key with id "
            + old.split("\\+")[1]
            + " vouched for the key with id "
            + fresh().split("\\+")[1]
            + ", which signs from there on.\n";
    for (String[] verify :
        new String[][] {
          {"ledger", "verify", data, key, "--since", before},
          {"ledger", "verify", data, "--since", before},
        }) {
      assertThat(done(verify).out())
          .startsWith("Verified: 7 entries, root ")
          .endsWith(step + "The first 5 are those that the kept checkpoint signs.\n");
    }
    assertThat(done("trace", "--kind=log-key-changed", data).out())
        .contains("The log's key was changed");
  }

  @Test
  void whatIsHandedOutAfterwardsChecksByTheKeyThatTheCustomerHas() throws IOException {
    String before = keep("before.txt");
    rotate();
    done("job", "close", "J-3", "--by=badge-07", data);
    rotate();
    String now = "--key=" + at("data/ledger.pub");
    String unit = at("unit.json");
    done("ledger", "prove", "--unit=ATR-26-0147", "--out", unit, data);
    String one = at("one.json");
    done("ledger", "prove", "4", "--bundle", "--out", one, data);
    String pdf = at("unit.pdf");
    done("trace", "--unit=ATR-26-0147", "--certificate", pdf, data);
    String growth = at("growth.json");
    done("ledger", "prove", "--since", before, "--out", growth, data);
    for (String proof : new String[] {unit, one, pdf, growth}) {
      for (String by : new String[] {key, now}) {
        assertThat(done("ledger", "check-proof", proof, by).out().replaceAll("\\s+", " "))
            .as(proof + " " + by)
            .contains("Its key was changed at entry 5:", "Its key was changed at entry 7:");
      }
    }
    String single = at("one.tlog-proof");
    done("ledger", "prove", "4", "--out", single, data);
    done("ledger", "check-proof", single, now);
    Said refused = say("ledger", "check-proof", single, key);
    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.out().replaceAll("\\s+", " "))
        .contains(
            "Ask the shop for the verifier key with id "
                + fresh().split("\\+")[1]
                + ", or for a bundle made anew (witnessmark ledger prove 4 --bundle), which carries"
                + " changes of the log's key.");
  }

  @Test
  void theNewKeyIsForItsOwnerAndTheOldOneIsKeptOnlyWhereAsked() throws IOException {
    Path secret = directory.resolve("data/ledger.key");
    String old = Files.readString(secret);
    Path kept = directory.resolve("old.key");
    assertThat(rotate("--keep-old=" + kept))
        .endsWith("The old private key is in " + kept + ".\n" + ANEW);
    assertThat(Files.readString(kept)).isEqualTo(old);
    assertThat(Files.readString(secret)).isNotEqualTo(old);
    for (Path file : new Path[] {kept, secret}) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
          .isEqualTo("rw-------");
    }
    assertThat(directory.resolve("data/ledger.key.next")).doesNotExist();
    assertThat(directory.resolve("data/ledger.pub.next")).doesNotExist();
    Said again = say("ledger", "rotate-key", data, "--keep-old=" + kept);
    assertThat(again.status()).isEqualTo(4);
    assertThat(again.err())
        .isEqualTo(
            "The old key cannot be kept in "
                + kept
                + ": a file of that name is in the way. Nothing was changed; name a new file in a"
                + " place that can be written to.\n");
    assertThat(done("ledger", "verify", data).out()).startsWith("Verified: 6 entries, ");
  }

  @Test
  void aCheckpointOfTheOldKeyBeyondTheChangeIsNotBelieved() throws Exception {
    String old = keep("old.txt");
    Path kept = directory.resolve("thief.key");
    rotate("--keep-old=" + kept);
    // The thief of the old key signs in its place what the log was before, and goes on.
    Path thief = Files.createDirectory(directory.resolve("thief"));
    Files.copy(kept, thief.resolve("ledger.key"));
    Files.copy(directory.resolve("shop.pub"), thief.resolve("ledger.pub"));
    Files.copy(directory.resolve("data/ledger.db"), thief.resolve("ledger.db"));
    String theirs = "--data=" + thief;
    Said refused = say("operator", "enrol", "badge-11", theirs);
    assertThat(refused.status()).isEqualTo(4);
    assertThat(refused.err()).contains("is not as it was signed");
    assertThat(done("ledger", "verify", "--since", old, data).status()).isZero();
  }

  @Test
  void newFilesBelongToWhomTheDirectoryBelongsTo() throws IOException {
    Path log = directory.resolve("data");
    boolean root = Files.getAttribute(log, "unix:uid").equals(0);
    if (root) {
      for (String name : new String[] {".", "ledger.db", "ledger.key", "ledger.pub"}) {
        Files.setAttribute(log.resolve(name), "unix:uid", 65534);
        Files.setAttribute(log.resolve(name), "unix:gid", 65533);
      }
    }
    rotate();
    for (String name : new String[] {"key.lock", "ledger.key", "ledger.pub", "ledger.db"}) {
      for (String what : new String[] {"unix:uid", "unix:gid"}) {
        assertThat(Files.getAttribute(log.resolve(name), what))
            .as(name + " " + what)
            .isEqualTo(Files.getAttribute(log, what));
      }
    }
  }

  @Test
  void theFileThatIsInTheWayIsNamed() throws IOException {
    Path lock = Files.createDirectory(directory.resolve("data/key.lock"));
    Said said = say("ledger", "rotate-key", data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .isEqualTo(
            "The next key cannot be written to "
                + at("data")
                + ": "
                + lock
                + ": it is a directory. Nothing was changed. Run as the user who owns the directory, or"
                + " once as root, who gives files that are not that user's back to him.\n");
  }

  @Test
  void whatWasHandedOutBeforeAChangeSaysHowItChecksAfterIt() throws IOException {
    String old = Files.readString(directory.resolve("shop.pub")).split("\\+")[1];
    String before = keep("before.txt");
    done("job", "close", "J-3", "--by=badge-07", data);
    String unit = at("unit.json");
    done("ledger", "prove", "--unit=ATR-26-0147", "--out", unit, data);
    String pdf = at("unit.pdf");
    done("trace", "--unit=ATR-26-0147", "--certificate", pdf, data);
    String growth = at("growth.json");
    done("ledger", "prove", "--since", before, "--out", growth, data);
    String single = at("one.tlog-proof");
    done("ledger", "prove", "4", "--out", single, data);
    rotate();
    String now = "--key=" + at("data/ledger.pub");
    for (String proof : new String[] {unit, pdf, growth, single}) {
      Said refused = say("ledger", "check-proof", proof, now);
      assertThat(refused.status()).as(proof).isEqualTo(1);
      assertThat(refused.out().replaceAll("\\s+", " "))
          .as(proof)
          .startsWith("NOTHING IS PROVED: the ")
          .contains(
              "checkpoint: is signed by the key with id "
                  + old
                  + ", expected the key with id "
                  + fresh().split("\\+")[1]
                  + ". Ask the shop for the verifier key with id "
                  + old
                  + ", ");
      // Both next steps are true: the key of that time, and the same made anew.
      done("ledger", "check-proof", proof, key);
    }
    assertThat(say("ledger", "check-proof", unit, now).out().replaceAll("\\s+", " "))
        .endsWith(
            ", which was in force when this was made, or have it made anew: what is made today"
                + " carries the changes of the log's key. ");
    String anew = at("anew.json");
    done("ledger", "prove", "4", "--bundle", "--out", anew, data);
    done("ledger", "check-proof", anew, now);
    done("trace", "--unit=ATR-26-0147", "--certificate", at("anew.pdf"), data);
    done("ledger", "check-proof", at("anew.pdf"), now);
  }
}
