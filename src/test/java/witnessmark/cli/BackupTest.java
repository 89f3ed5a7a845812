package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.ledger.DirectoryLock;
import witnessmark.ledger.LedgerFiles;

class BackupTest extends ProofDesk {
  private static List<String> names(Path directory) throws IOException {
    try (Stream<Path> all = Files.list(directory)) {
      return all.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private Path backup(String name, String... more) {
    String[] command = new String[4 + more.length];
    System.arraycopy(new String[] {"ledger", "backup", at(name), data}, 0, command, 0, 4);
    System.arraycopy(more, 0, command, 4, more.length);
    done(command);
    return directory.resolve(name);
  }

  @Test
  void aBackupIsAVerifiedCopyWithoutThePrivateKey() throws IOException {
    Said said = done("ledger", "backup", at("monday"), data);
    assertThat(said.out().replaceAll("\\s+", " "))
        .isEqualTo(
            "Backed up and verified: 5 entries in "
                + at("monday")
                + ". Its checkpoint signs the root "
                + checkpoint()[2]
                + ". The private key is not in it: keep a copy of ledger.key in a safe place, or a"
                + " restored log can be read but not continued. ");
    Path backup = directory.resolve("monday");
    assertThat(names(backup)).containsExactly("ledger.db", "ledger.pub");
    assertThat(names(directory)).noneMatch(n -> n.endsWith(".unfinished"));
    assertThat(done("ledger", "verify", key, "--data=" + backup).out())
        .startsWith("Verified: 5 entries");
  }

  @Test
  void thePrivateKeyIsInItOnlyWhereAskedForAndForItsOwnerAlone() throws IOException {
    Path backup = backup("monday", "--with-key");
    assertThat(names(backup)).containsExactly("ledger.db", "ledger.key", "ledger.pub");
    assertThat(backup.resolve("ledger.key"))
        .hasSameTextualContentAs(directory.resolve("data/ledger.key"));
    assertThat(mode(backup.resolve("ledger.key"))).isEqualTo("rw-------");
  }

  @Test
  void othersReadTheLogNeitherInABackupNorWhereItIsRestored() throws IOException {
    Path backup = backup("monday");
    Path restored = directory.resolve("restored");
    done("ledger", "restore", backup.toString(), "--data=" + restored);
    for (Path log : List.of(backup, restored)) {
      assertThat(mode(log)).isEqualTo("rwxr-x---");
      assertThat(mode(log.resolve("ledger.db"))).isEqualTo("rw-r-----");
    }
  }

  private static String mode(Path file) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
  }

  @Test
  void nothingIsOverwritten() throws IOException {
    backup("monday");
    byte[] before = Files.readAllBytes(directory.resolve("monday/ledger.db"));
    done("job", "close", "J-3", "--by=badge-07", data);
    Said again = say("ledger", "backup", at("monday"), data);
    assertThat(again.status()).isEqualTo(4);
    assertThat(again.err())
        .isEqualTo(
            at("monday")
                + " holds a log already, and no backup overwrites one. Name a new directory.\n");
    assertThat(Files.readAllBytes(directory.resolve("monday/ledger.db"))).isEqualTo(before);
    Said file = say("ledger", "backup", at("shop.pub"), data);
    assertThat(file.status()).isEqualTo(4);
    assertThat(file.err()).contains("exists already, and no backup overwrites anything.");
    assertThat(say("ledger", "backup", at("data"), data).status()).isEqualTo(4);
  }

  @Test
  void inADirectoryThatExistsItGetsANameByItsDate() throws IOException {
    Path disk = Files.createDirectory(directory.resolve("disk"));
    done("ledger", "backup", disk.toString(), data);
    assertThat(names(disk)).singleElement().asString().matches("witnessmark-\\d{8}T\\d{6}Z");
  }

  @Test
  void aLogThatDoesNotVerifyIsNotBackedUp() throws Exception {
    tamper("UPDATE entry SET bytes = x'7b7d' WHERE n = 1");
    Said said = say("ledger", "backup", at("monday"), data);
    assertThat(said.status()).isEqualTo(1);
    assertThat(said.err())
        .startsWith("It does not verify, so nothing was done. The first of ")
        .contains("stop the daemon and copy the whole data directory.");
    assertThat(names(directory)).doesNotContain("monday", "monday.unfinished");
  }

  @Test
  void whatAKilledBackupLeftIsTakenOver() throws IOException {
    Path left = Files.createDirectory(directory.resolve("monday.unfinished"));
    Files.writeString(left.resolve("ledger.db"), "half");
    Files.writeString(left.resolve("backup.lock"), "");
    backup("monday");
    assertThat(left).doesNotExist();
  }

  @Test
  void aRestoredLogIsTheSameAndGoesOn() throws IOException {
    Path backup = backup("monday", "--with-key");
    String into = "--data=" + at("new");
    Said said = done("ledger", "restore", backup.toString(), into);
    assertThat(said.out().replaceAll("\\s+", " "))
        .startsWith("Verified and restored: 5 entries in " + at("new") + ". Its newest entry was")
        .contains("What was recorded after this backup is NOT in it.")
        .contains("The key that signs it is in place: the daemon can go on.");
    assertThat(done("ledger", "export", "--jsonl", into).out())
        .isEqualTo(done("ledger", "export", "--jsonl", data).out());
    done("job", "close", "J-3", "--by=badge-07", into);
    assertThat(done("ledger", "verify", key, into).out()).startsWith("Verified: 6 entries");
    assertThat(names(directory.resolve("new"))).noneMatch(n -> n.endsWith(".unfinished"));
  }

  @Test
  void withoutTheKeyItCanBeReadButNotContinued() throws IOException {
    Path backup = backup("monday");
    String into = "--data=" + at("new");
    assertThat(done("ledger", "restore", backup.toString(), into).out().replaceAll("\\s+", " "))
        .contains("the log can be read, verified and proved, but nothing can be added to it.");
    assertThat(done("ledger", "verify", into).out()).startsWith("Verified: 5 entries");
    assertThat(say("job", "close", "J-3", "--by=badge-07", into).status()).isEqualTo(4);
    Files.copy(directory.resolve("data/ledger.key"), directory.resolve("new/ledger.key"));
    done("job", "close", "J-3", "--by=badge-07", into);
  }

  @Test
  void noBackupIsPutOverALog() throws IOException {
    Path backup = backup("monday", "--with-key");
    done("job", "close", "J-3", "--by=badge-07", data);
    Said said = say("ledger", "restore", backup.toString(), data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .startsWith(at("data") + " has a log already, and no backup is put over one.")
        .contains("move the whole directory away first, and keep it.");
    assertThat(done("ledger", "verify", data).out()).startsWith("Verified: 6 entries");
  }

  @Test
  void aBackupOlderThanWhatOthersHaveSeenIsTold() throws IOException {
    Path backup = backup("monday", "--with-key");
    String same = keep("same.txt");
    done("job", "close", "J-3", "--by=badge-07", data);
    String newer = keep("newer.txt");
    Said said =
        say("ledger", "restore", backup.toString(), "--since=" + newer, "--data=" + at("x"));
    assertThat(said.status()).isEqualTo(1);
    assertThat(said.err())
        .startsWith(
            "This backup is older than what others have seen: it has 5 entries, a kept checkpoint"
                + " signs 6. Nothing was restored.");
    assertThat(directory.resolve("x")).doesNotExist();
    done("ledger", "restore", backup.toString(), "--since=" + same, "--data=" + at("x"));
    // Going on from it is another history, and whoever kept the newer checkpoint sees that.
    done("operator", "enrol", "badge-11", "--data=" + at("x"));
    done("ledger", "verify", "--since=" + same, "--data=" + at("x"));
    Said other = say("ledger", "verify", "--since=" + newer, "--data=" + at("x"));
    assertThat(other.status()).isEqualTo(1);
    assertThat(other.out()).contains(": history was rewritten since\n");
  }

  @Test
  void aBackupThatDoesNotVerifyIsNotRestored() throws IOException {
    Path backup = backup("monday", "--with-key");
    byte[] bytes = Files.readAllBytes(backup.resolve("ledger.db"));
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    bytes[text.indexOf("badge-07")] ^= 1;
    Files.write(backup.resolve("ledger.db"), bytes);
    Said said = say("ledger", "restore", backup.toString(), "--data=" + at("x"));
    assertThat(said.status()).isEqualTo(1);
    assertThat(said.err()).startsWith("It does not verify, so nothing was done. ");
    assertThat(directory.resolve("x")).doesNotExist();
  }

  @Test
  void aBackupFromBeforeAChangeOfTheKeyIsRestoredWithItsOwnKey() throws IOException {
    Path before = backup("before", "--with-key");
    done("ledger", "rotate-key", data);
    Path after = backup("after", "--with-key");
    done("ledger", "restore", before.toString(), "--data=" + at("x"));
    done("operator", "enrol", "badge-11", "--data=" + at("x"));
    done("ledger", "restore", after.toString(), key, "--data=" + at("y"));
    done("operator", "enrol", "badge-11", "--data=" + at("y"));
    done("ledger", "verify", key, "--data=" + at("y"));
    // The key of the one does not sign the other.
    Files.createDirectory(directory.resolve("z"));
    for (String name : List.of("ledger.key", "ledger.pub")) {
      Files.copy(after.resolve(name), directory.resolve("z").resolve(name));
    }
    Said said = say("ledger", "restore", before.toString(), "--data=" + at("z"));
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err()).contains("does not sign this backup");
    assertThat(names(directory.resolve("z"))).containsExactly("ledger.key", "ledger.pub");
  }

  /** Takes the log away, as somebody may, and leaves what lies beside it. */
  private Path lost() throws IOException {
    Files.move(directory.resolve("data/ledger.db"), directory.resolve("lost.db"));
    return directory.resolve("data");
  }

  @Test
  void whatALostLogLeftIsNotMixedIntoTheRestoredOne() throws IOException {
    Path backup = backup("monday", "--with-key");
    Path left = lost();
    Path wal = Files.writeString(left.resolve("ledger.db-wal"), "what was recorded last");
    Files.writeString(left.resolve("ledger.db-shm"), "");
    List<String> before = names(left);
    Said said = say("ledger", "restore", backup.toString(), data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .isEqualTo(
            left
                + " still holds a part of the log that was here, which would be mixed into the"
                + " restored one: what was recorded last may be in it alone. Stop the daemon, move"
                + " it away, keep it, and restore again:\n  mkdir "
                + left
                + "/lost && mv "
                + wal
                + " "
                + left
                + "/lost\n");
    assertThat(names(left)).isEqualTo(before);
    assertThat(wal).hasContent("what was recorded last");
    Files.move(wal, Files.createDirectory(left.resolve("lost")).resolve("ledger.db-wal"));
    done("ledger", "restore", backup.toString(), data);
    assertThat(done("ledger", "verify", key, data).out()).startsWith("Verified: 5 entries");
  }

  @Test
  void whatReadersLeaveBesideALogHoldsNothingAndGoes() throws IOException {
    Path backup = backup("monday", "--with-key");
    Path left = lost();
    Files.write(left.resolve("ledger.db-wal"), new byte[0]);
    Files.write(left.resolve("ledger.db-shm"), new byte[32768]);
    done("ledger", "restore", backup.toString(), data);
    assertThat(done("ledger", "verify", key, data).out()).startsWith("Verified: 5 entries");
  }

  @Test
  void nothingIsRestoredUnderADaemonThatStillWorksThere() throws IOException {
    Path backup = backup("monday", "--with-key");
    DirectoryLock lock = DirectoryLock.take(new LedgerFiles(directory.resolve("data")));
    lost();
    Said said = say("ledger", "restore", backup.toString(), data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .isEqualTo(
            "A process works on "
                + at("data")
                + ", though there is no ledger.db: a daemon whose log was removed, or another"
                + " restore. Which one: fuser -v "
                + at("data/daemon.lock")
                + " (package psmisc). Stop it first.\n");
    lock.close();
    done("ledger", "restore", backup.toString(), data);
  }

  @Test
  void thePrivateKeyAloneSaysWhetherItIsTheRightOne() throws IOException {
    Path backup = backup("monday");
    Path left = lost();
    String open = Files.readString(left.resolve("ledger.pub"));
    String strange = open.replace("+A", "+B");
    for (String pub : new String[] {null, strange}) {
      Files.deleteIfExists(left.resolve("ledger.db"));
      Files.deleteIfExists(left.resolve("ledger.pub"));
      if (pub != null) {
        Files.writeString(left.resolve("ledger.pub"), pub);
      }
      assertThat(done("ledger", "restore", backup.toString(), data).out().replaceAll("\\s+", " "))
          .contains("The key that signs it is in place");
      assertThat(left.resolve("ledger.pub")).hasContent(open);
    }
    done("job", "close", "J-3", "--by=badge-07", data);
  }

  @Test
  void theNextStepForABackupFromBeforeAChangeOfTheKeyIsTrue() throws IOException {
    Path before = backup("before");
    String id = Files.readString(before.resolve("ledger.pub")).split("\\+")[1];
    Path old = directory.resolve("old.key");
    done("ledger", "rotate-key", data, "--keep-old=" + old);
    Path left = lost();
    Said said = say("ledger", "restore", before.toString(), data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .startsWith(
            left.resolve("ledger.key")
                + " does not sign this backup, which is signed by the key with id "
                + id
                + ": it is the key of another log, or of this one before or after a change of its"
                + " key (rotate-key). ")
        .contains("to go on from it the private key with that id is needed");
    for (String name : List.of("ledger.key", "ledger.pub")) {
      Files.move(left.resolve(name), directory.resolve("kept-" + name));
    }
    assertThat(done("ledger", "restore", before.toString(), data).out().replaceAll("\\s+", " "))
        .contains("nothing can be added to it");
    assertThat(done("ledger", "verify", data).out()).startsWith("Verified: 5 entries");
    Files.copy(old, left.resolve("ledger.key"));
    done("job", "close", "J-3", "--by=badge-07", data);
  }

  @Test
  void aDiskThatIsNotMountedIsNotMadeUp() {
    Said said = say("ledger", "backup", at("mnt/backup/monday"), data);
    assertThat(said.status()).isEqualTo(4);
    assertThat(said.err())
        .isEqualTo(
            "The directory "
                + at("mnt/backup")
                + " does not exist (is the disk mounted?). Make it, or name another place.\n");
    assertThat(directory.resolve("mnt")).doesNotExist();
  }

  @Test
  void noBackupIsMadeInTheDataDirectory() throws IOException {
    Path link = Files.createSymbolicLink(directory.resolve("link"), directory.resolve("data"));
    Path below = Files.createDirectory(directory.resolve("data/below"));
    for (String place :
        List.of(at("data"), at("data/monday"), below.toString(), link + "/monday", below + "/x")) {
      Said said = say("ledger", "backup", place, data);
      assertThat(said.status()).as(place).isEqualTo(4);
      assertThat(said.err())
          .as(place)
          .isEqualTo(
              place
                  + " is in the data directory, which a backup is to outlive. Name a place"
                  + " elsewhere, best on another disk.\n");
    }
    assertThat(names(below)).isEmpty();
  }
}
