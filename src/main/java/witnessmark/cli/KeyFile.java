package witnessmark.cli;

import java.io.IOException;
import java.nio.file.Path;
import witnessmark.desk.Declined;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.verify.Checkpoint;
import witnessmark.ledger.verify.NoteException;
import witnessmark.ledger.verify.VerifierKey;

/** Reads verifier keys, and checkpoints that were kept. */
final class KeyFile {
  private static final String NO_KEY =
      " holds no verifier key, one line NAME+KEYID+BASE64 as ledger create prints it";

  /** Characters within which the outer form of a checkpoint shows. */
  static final int LONGEST = 4096;

  private static final String REPLACED =
      ".\nIf it came from here, the log or its key was replaced since.";

  private KeyFile() {}

  /** The key line of a file named on the command line. */
  static String given(Path key) {
    try {
      return checked(Files.text(key));
    } catch (IllegalArgumentException e) {
      throw new Refusal(Exit.INPUT, key + NO_KEY + "; name the file that you kept it in");
    }
  }

  /** The log's own key line. Nothing was named on the command line: it is surroundings. */
  static String own(LedgerFiles files) {
    String why;
    try {
      return checked(java.nio.file.Files.readString(files.verifier()));
    } catch (IOException e) {
      why = " cannot be read: " + FileFault.why(e);
    } catch (IllegalArgumentException e) {
      why = NO_KEY;
    }
    throw new Refusal(
        Exit.SURROUNDINGS,
        files.verifier()
            + why
            + ".\nRestore it from a backup, or name the copy that was kept elsewhere with --key FILE.");
  }

  private static String checked(String text) {
    VerifierKey.parse(text);
    return text.strip();
  }

  /** The note in a file, whatever the mailer or printer did to the ends of its lines. */
  static String note(Path file) {
    return Files.text(file).replace("\r\n", "\n").stripTrailing() + "\n";
  }

  /**
   * What the checkpoint that somebody kept says. Whether the right key signed it is told later,
   * with the log's changes of its key at hand.
   *
   * @param file where the note was read
   * @param verifier a key of the log
   */
  static Checkpoint kept(Path file, String note, String verifier) {
    return kept(file, note, verifier, "Name a file that ledger checkpoint printed.");
  }

  /**
   * The same.
   *
   * @param next what to do about a file that is none, a sentence
   */
  static Checkpoint kept(Path file, String note, String verifier, String next) {
    VerifierKey key = VerifierKey.parse(verifier);
    try {
      return Checkpoint.claimed(note, key.name());
    } catch (NoteException e) {
      if (note.stripLeading().startsWith("{")) {
        throw new Refusal(
            Exit.INPUT,
            file + " is a proof, not a checkpoint: see what it shows with ledger check-proof.");
      }
      String not = file + " is no checkpoint of the log " + key.name() + ": " + brief(e);
      if (looksLikeOne(note)) {
        throw new Declined(not + REPLACED);
      }
      throw new Refusal(Exit.INPUT, not + ".\n" + next);
    }
  }

  /** A wrong file may be quoted at any length. */
  private static String brief(NoteException e) {
    String text = String.valueOf(e.getMessage());
    return text.length() <= 300 ? text : text.substring(0, 300) + "…";
  }

  /** Whether a text has the outer form of a checkpoint, of whatever log. */
  static boolean looksLikeOne(String note) {
    String[] lines = note.split("\n", 4);
    return lines.length == 4 && lines[1].matches("[0-9]+");
  }
}
