package witnessmark.cli;

import java.io.Console;
import java.nio.file.Path;
import java.util.Arrays;

/** Passphrases: from a file, the environment, or the terminal; never from an argument. */
final class Passphrase {
  static final String DESCRIPTION =
      "A file whose first line is the passphrase"
          + " (default: $WITNESSMARK_PASSPHRASE, else it is asked for at the terminal).";

  /** What NIST SP 800-63B asks of a secret that a person chooses, at least; from memory. */
  private static final int LEAST = 8;

  private static final String VARIABLE = "WITNESSMARK_PASSPHRASE";

  private Passphrase() {}

  /**
   * The passphrase that opens a key.
   *
   * @param file where it stands; null where that was not said
   */
  static char[] given(Path file, Path sealed) {
    char[] elsewhere = elsewhere(file);
    return elsewhere != null ? elsewhere : asked(terminal(), "Passphrase of " + sealed + ": ");
  }

  /** One for a new key: at the terminal it is typed twice. */
  static char[] chosen(Path file) {
    char[] secret = elsewhere(file);
    if (secret == null) {
      secret = asked(terminal(), "New passphrase: ");
      char[] again = asked(terminal(), "The same again: ");
      boolean same = Arrays.equals(secret, again);
      Arrays.fill(again, '\0');
      if (!same) {
        throw new Refusal(Exit.SURROUNDINGS, "The two passphrases differ; begin again.");
      }
    }
    if (secret.length < LEAST) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          "The passphrase has "
              + secret.length
              + " characters; at least "
              + LEAST
              + " are needed. Several words are good.");
    }
    return secret;
  }

  private static char[] elsewhere(Path file) {
    if (file != null) {
      return Files.text(file).lines().findFirst().orElse("").toCharArray();
    }
    String variable = System.getenv(VARIABLE);
    return variable == null ? null : variable.toCharArray();
  }

  private static Console terminal() {
    Console console = System.console();
    if (console == null) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          "The passphrase cannot be asked for: there is no terminal. Give --passphrase-file FILE, or "
              + VARIABLE
              + ".");
    }
    return console;
  }

  private static char[] asked(Console console, String prompt) {
    char[] secret = console.readPassword("%s", prompt);
    if (secret == null) {
      throw new Refusal(Exit.SURROUNDINGS, "No passphrase was typed.");
    }
    return secret;
  }
}
