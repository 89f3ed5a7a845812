package wrenchsim.shop;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Something done wrong on purpose at one visit to a fastener.
 *
 * @param kind what goes wrong
 * @param neighbour for {@link Kind#SKIP} and {@link Kind#WRONG}: the fastener taken instead, where
 *     the script names it
 */
public record Mistake(Kind kind, Optional<String> neighbour) {

  /** What can go wrong. */
  public enum Kind {
    /** Stops below the band. */
    UNDER,
    /** Pulls through the band. */
    OVER,
    /** Does it right; the wrench sends the same message twice. */
    REDELIVER,
    /** Leaves the fastener out and takes its neighbour for it. */
    SKIP,
    /** Does it right, then takes the same fastener for the next one. */
    DOUBLE,
    /** Does it right, then undoes it. */
    LOOSEN,
    /** Takes a fastener of another group that is not expected, with its own wrench and torque. */
    WRONG,
    /** Takes a wrench that must not be used there. */
    WRONGTOOL,
    /** Turns it in with its threads crossed. */
    CROSS;

    /** The word on the command line and in the truth file. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  public Mistake {
    Objects.requireNonNull(kind, "kind");
    if (neighbour.isPresent() && kind != Kind.SKIP && kind != Kind.WRONG) {
      throw new IllegalArgumentException(
          "only skip and wrong name another fastener, but got "
              + kind.word()
              + ":"
              + neighbour.get());
    }
  }

  /** A mistake of this kind. */
  public static Mistake of(Kind kind) {
    return new Mistake(kind, Optional.empty());
  }

  /** Reads {@code under}, {@code over} …, {@code skip:OTHER} or {@code wrong:OTHER}. */
  public static Mistake parse(String text) {
    String[] parts = text.split(":", 2);
    return new Mistake(
        kind(parts[0]), parts.length == 2 ? Optional.of(parts[1]) : Optional.empty());
  }

  /** The kind of this word. */
  public static Kind kind(String word) {
    return Arrays.stream(Kind.values())
        .filter(k -> k.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "a mistake is one of %s, skip:OTHER or wrong:OTHER, but got '%s'"
                        .formatted(allowed(), word)));
  }

  private static String allowed() {
    return Arrays.stream(Kind.values()).map(Kind::word).collect(Collectors.joining(", "));
  }
}
