package witnessmark.backup;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.ledger.Durable;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.Ownership;

/**
 * The key files beside a restored log: a private key that is there and signs the log, or else the
 * backup's, where it has one.
 */
final class RestoredKeys {
  private final LedgerFiles backup;
  private final LedgerFiles into;
  private final String verifier;
  private final Checked checked;
  private final List<Path> made = new ArrayList<>();

  RestoredKeys(LedgerFiles backup, LedgerFiles into, String verifier, Checked checked) {
    this.backup = backup;
    this.into = into;
    this.verifier = verifier;
    this.checked = checked;
  }

  /**
   * Puts the keys in place.
   *
   * @return whether a private key that signs the log is there
   * @throws CannotException when one is there that does not
   */
  boolean put() throws IOException {
    List<String> lines = new ArrayList<>(List.of(verifier));
    if (Files.isReadable(backup.verifier())) {
      lines.add(Files.readString(backup.verifier()).strip());
    }
    // The private key decides: its public half is known from the backup.
    Optional<LogKey> here = checked.key(into.keysUnder(lines));
    if (here.isPresent()) {
      open(here.get().verifierLine());
      return true;
    }
    if (Files.exists(into.secret())) {
      throw strange();
    }
    Optional<LogKey> key = checked.key(backup.keysUnder(lines));
    open(key.map(LogKey::verifierLine).orElseGet(() -> signing(lines)));
    if (key.isPresent()) {
      made.add(into.secret());
      Durable.createPrivate(into.secret(), key.get().pem());
      Ownership.give(into.secret(), into.directory());
    }
    return key.isPresent();
  }

  /** The line whose key signs; the one that was given checks everything as well. */
  private String signing(List<String> lines) {
    String id = "+" + checked.signer() + "+";
    return lines.stream().filter(l -> l.contains(id)).findFirst().orElse(verifier);
  }

  /** Removes what was put there. */
  void takeBack() throws IOException {
    for (Path file : made) {
      Files.deleteIfExists(file);
    }
  }

  private void open(String line) throws IOException {
    Path file = into.verifier();
    if (Files.exists(file)) {
      if (Files.readString(file, StandardCharsets.UTF_8).strip().equals(line)) {
        return;
      }
      Files.delete(file);
    }
    made.add(file);
    Durable.create(file, line + "\n");
    Ownership.give(file, into.directory());
  }

  private CannotException strange() {
    return new CannotException(
        Files.isReadable(into.secret())
            ? into.secret()
                + " does not sign this backup, which is signed by the key with id "
                + checked.signer()
                + ": it is the key of another log, or of this one before or after a change of its"
                + " key (rotate-key). Take a backup from the same side of the change; or move "
                + into.secret()
                + " and ledger.pub away, keep them, and restore again. What is restored then can be"
                + " read, verified and proved; to go on from it the private key with that id is"
                + " needed, and rotate-key destroyed it unless --keep-old named a file for it."
            : into.secret() + " cannot be read by this user. Run as the user who owns it.");
  }
}
