package witnessmark.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.badge.PrivateHalf;
import witnessmark.badge.PublicHalf;
import witnessmark.desk.EnrolKey;
import witnessmark.desk.WithdrawKey;

/** The keys with which badges decide. */
@Command(
    name = "key",
    mixinStandardHelpOptions = true,
    description = {
      "Make, enrol and withdraw the keys with which badges decide: docs/people.md.",
      "A badge that holds a key decides with it only; the signature stands in the entry."
    },
    footer = {"", "Example:  witnessmark operator key make badge-11"})
final class OperatorKeyCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "make",
      mixinStandardHelpOptions = true,
      description = {
        "Make a key pair: a file sealed by a passphrase, and FILE.pub for whoever enrols it.",
        "Nothing goes on record yet. Do it where only you read along."
      },
      footer = {"", "Example:  witnessmark operator key make badge-11 --out badge-11.key"})
  int make(
      @Parameters(paramLabel = "BADGE") String badge,
      @Option(names = "--out", paramLabel = "FILE", description = "Default: BADGE.key.") Path out,
      @Option(
              names = "--passphrase-file",
              paramLabel = "FILE",
              description = Passphrase.DESCRIPTION)
          Path passphrase) {
    if (out == null && !badge.matches("[A-Za-z0-9._-]{1,64}")) {
      throw new Refusal(Exit.USAGE, badge + " makes no file's name; give one with --out FILE");
    }
    Path sealed = out == null ? Path.of(badge + ".key") : out;
    Path open = Path.of(sealed + ".pub");
    OwnFile.mustBeNew(sealed);
    OwnFile.mustBeNew(open);
    char[] secret = Passphrase.chosen(passphrase);
    PrivateHalf.Pair pair = PrivateHalf.generate();
    try {
      OwnFile.write(sealed, pair.privateHalf().sealed(secret));
    } finally {
      Arrays.fill(secret, '\0');
    }
    new ForceOption().write(open, pair.publicHalf().pem().getBytes(StandardCharsets.UTF_8));
    out("Made " + sealed + ", sealed by the passphrase: keep both to yourself, and a copy apart.");
    out("Made " + open + ": give it to who enrols it, e.g.");
    out(
        "  witnessmark operator key enrol "
            + badge
            + " --public "
            + open
            + " --by BADGE --sign-with FILE");
    out(
        "BADGE is of quality and FILE its key. Where no badge of quality holds one yet, both are the");
    out("new one's: --by " + badge + " --sign-with " + sealed);
    return Exit.YES;
  }

  @Command(
      name = "enrol",
      mixinStandardHelpOptions = true,
      description = {
        "Put the public half of a badge's key on record, in place of the one before.",
        "Since a quality badge holds a key, only quality with its key may; until then, the badge",
        "itself with the key it enrols."
      },
      footer = {
        "",
        "Example:  witnessmark operator key enrol badge-11 --public badge-11.key.pub \\",
        "            --by badge-11 --sign-with badge-11.key"
      })
  int enrol(
      @Parameters(paramLabel = "BADGE") String badge,
      @Option(
              names = "--public",
              paramLabel = "FILE",
              required = true,
              description = "What operator key make wrote beside the key.")
          Path open,
      @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who enrols it.")
          String by,
      @Mixin SignOption sign,
      @Mixin DataOption data) {
    PublicHalf half = publicHalf(open);
    long n = data.carryOut(new EnrolKey(badge, half.base64(), by), sign);
    out(badge + " decides with its key from now on (entry " + n + ").");
    out("Keep " + half.base64() + " elsewhere: it shows later that this is the key.");
    return Exit.YES;
  }

  @Command(
      name = "withdraw",
      mixinStandardHelpOptions = true,
      description = {
        "Take a badge's key out of force, as when it was lost or its passphrase forgotten.",
        "What was signed with it until then stays as it is."
      },
      footer = {
        "",
        "Example:  witnessmark operator key withdraw badge-12 --by badge-11 --because \"lost\" \\",
        "            --sign-with badge-11.key"
      })
  int withdraw(
      @Parameters(paramLabel = "BADGE") String badge,
      @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who does it.")
          String by,
      @Option(names = "--because", required = true, description = "Why; goes on record.")
          String because,
      @Mixin SignOption sign,
      @Mixin DataOption data) {
    WithdrawKey command = Given.valid(spec, () -> new WithdrawKey(badge, by, because));
    long n = data.carryOut(command, sign);
    out("The key of " + badge + " is no longer in force (entry " + n + ").");
    return Exit.YES;
  }

  private static PublicHalf publicHalf(Path file) {
    try {
      return PublicHalf.ofPem(Files.text(file));
    } catch (IllegalArgumentException e) {
      throw new Refusal(
          Exit.INPUT,
          file + ": " + e.getMessage() + ". Name the .pub file that operator key make wrote.");
    }
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
