package witnessmark.cli;

import java.util.Arrays;
import java.util.stream.Collectors;
import witnessmark.entry.Word;

/** Words of the log as typed on the command line. */
final class Words {
  private Words() {}

  /**
   * The word's constant.
   *
   * @param what how the fault names it, e.g. {@code decision}
   * @throws IllegalArgumentException when it is none of them
   */
  static <E extends Enum<E> & Word> E read(Class<E> type, String what, String text) {
    return Arrays.stream(type.getEnumConstants())
        .filter(w -> w.code().equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "unknown " + what + " \"" + text + "\"; allowed are " + allowed(type)));
  }

  private static <E extends Enum<E> & Word> String allowed(Class<E> type) {
    return Arrays.stream(type.getEnumConstants()).map(Word::code).collect(Collectors.joining(", "));
  }
}
