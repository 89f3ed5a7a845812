package witnessmark.cli;

import java.util.List;
import picocli.CommandLine.Option;
import witnessmark.entry.Acknowledged;

/** The {@code --acknowledge} option: findings that somebody has looked at. */
final class AcknowledgeOption {
  @Option(
      names = "--acknowledge",
      paramLabel = "CODE@STEP=REASON",
      description = "Record with --by why a finding of the check is all right; may be repeated.")
  private List<String> stated = List.of();

  /**
   * What was acknowledged, in the order given.
   *
   * @throws IllegalArgumentException when one says no finding or no reason
   */
  List<Acknowledged> all() {
    return stated.stream().map(AcknowledgeOption::read).toList();
  }

  private static Acknowledged read(String text) {
    int equals = text.indexOf('=');
    int at = text.indexOf('@');
    if (at < 1 || equals < at + 2) {
      throw new IllegalArgumentException(
          "\""
              + text
              + "\" names no finding and its reason; write it like"
              + " band-wide@pivot=\"as the maker's instructions have it\"");
    }
    return new Acknowledged(text.substring(0, equals), text.substring(equals + 1));
  }
}
