package witnessmark.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Option;
import witnessmark.badge.PrivateHalf;
import witnessmark.badge.WrongPassphrase;
import witnessmark.ledger.Modes;
import witnessmark.pipeline.Pen;

/** The {@code --sign-with} option: the key with which a decision is signed. */
final class SignOption {
  private static final String FILE = "WITNESSMARK_SIGN_WITH";

  @Option(
      names = "--sign-with",
      paramLabel = "FILE",
      description =
          "The sealed key of the badge (operator key make), where it holds one"
              + " (default: $"
              + FILE
              + ").")
  private Path file;

  @Option(names = "--passphrase-file", paramLabel = "FILE", description = Passphrase.DESCRIPTION)
  private Path passphrase;

  /** The key, opened, where one is named; before the log is held, so that nobody waits for it. */
  Optional<Pen> pen() {
    return Optional.ofNullable(file)
        .or(() -> Optional.ofNullable(System.getenv(FILE)).filter(f -> !f.isBlank()).map(Path::of))
        .map(f -> opened(f)::sign);
  }

  private PrivateHalf opened(Path sealed) {
    Stream.of(Optional.of(sealed), Optional.ofNullable(passphrase))
        .flatMap(Optional::stream)
        .flatMap(f -> Modes.open(f).stream())
        .forEach(System.err::println);
    String pem = Files.text(sealed);
    char[] secret = Passphrase.given(passphrase, sealed);
    try {
      return PrivateHalf.open(pem, secret);
    } catch (WrongPassphrase e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          "The passphrase does not open "
              + sealed
              + ", or the file is damaged. Nothing was recorded: try again, or use a copy of it.");
    } catch (IllegalArgumentException e) {
      throw new Refusal(
          Exit.INPUT,
          sealed + ": " + e.getMessage() + ". Name the file that operator key make wrote.");
    } finally {
      Arrays.fill(secret, '\0');
    }
  }
}
