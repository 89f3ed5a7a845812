package witnessmark.cli.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import witnessmark.sight.Ability;
import witnessmark.sight.Announced;
import witnessmark.sight.Mistake;
import witnessmark.sight.Visibility;

/**
 * What is announced of a procedure, in short, and what to do next. What another wrench would bring
 * is announced in the same way, so that nothing is promised here that is not held to.
 */
public final class SightSummary {
  /** Said where nothing else is to be told. */
  static final String ALL_SEEN = "Every mistake that is told apart here would be seen.";

  private final Places places;
  private final Function<Ability, List<Announced>> with;
  private final List<Announced> announced;

  /**
   * @param with what is announced where every reading shows this, too
   */
  public SightSummary(Places places, Function<Ability, List<Announced>> with) {
    this.places = places;
    this.with = with;
    this.announced = with.apply(Ability.TORQUE_ONLY);
  }

  /** Prints it. */
  public void print(Page page) {
    Set<Mistake> open =
        announced.stream()
            .filter(a -> a.visibility() != Visibility.SEEN)
            .map(Announced::mistake)
            .collect(Collectors.toSet());
    if (open.isEmpty()) {
      page.say(announced.isEmpty() ? "No step here tightens anything." : ALL_SEEN);
      return;
    }
    if (open.equals(Set.of(Mistake.MISSING_WASHER))) {
      page.say("Every mistake that is told apart here would be seen, save a missing washer.");
      return;
    }
    hiddenSkip(page);
    others(page);
    page.say(counts());
  }

  private void hiddenSkip(Page page) {
    List<Announced> all = announced.stream().filter(SightSummary::hidden).toList();
    List<Announced> unseen = all.stream().filter(SightSummary::unseen).toList();
    if (!unseen.isEmpty()) {
      page.say(
          "hidden-skip may leave no trace in "
              + places.words(unseen)
              + ": a second hit on a tight one counts for the one that was skipped."
              + followed(unseen));
      page.say("Next step: " + help(unseen) + ".");
    } else if (!all.isEmpty()) {
      boolean asked = all.stream().anyMatch(a -> a.visibility() == Visibility.ASKED);
      page.say(
          "hidden-skip is " + (asked ? "seen or asked about" : "seen") + " wherever it may be.");
    }
  }

  private String followed(List<Announced> unseen) {
    List<Announced> followed = unseen.stream().filter(places::followed).toList();
    if (followed.isEmpty()) {
      return "";
    }
    return " A later pass goes over "
        + (followed.size() == unseen.size() ? "each of them" : places.words(followed))
        + " again.";
  }

  private String help(List<Announced> unseen) {
    List<String> ways = new ArrayList<>();
    Set<String> dark =
        with.apply(Ability.ANGLE).stream()
            .filter(a -> hidden(a) && unseen(a))
            .map(SightSummary::place)
            .collect(Collectors.toSet());
    List<Announced> helped = unseen.stream().filter(a -> !dark.contains(place(a))).toList();
    if (!helped.isEmpty()) {
      ways.add(
          "a wrench with angle (seen or asked about then"
              + (dark.isEmpty() ? "" : " in " + places.words(helped))
              + ")");
    }
    ways.add("a position with each reading, by wrench or scan (seen)");
    List<Announced> last =
        unseen.stream().filter(a -> !places.followed(a) && !places.check(a)).toList();
    if (!last.isEmpty()) {
      ways.add(
          "a check pass over "
              + (last.size() == unseen.size() ? "each of them" : Places.groups(last))
              + " in another order (it would mend it)");
    }
    return String.join(", or ", ways);
  }

  private void others(Page page) {
    String codes =
        announced.stream()
            .filter(a -> unseen(a) && !hidden(a))
            .map(Announced::mistake)
            .distinct()
            .sorted(Gravity.ORDER)
            .map(Mistake::code)
            .collect(Collectors.joining(", "));
    if (!codes.isEmpty()) {
      page.say(
          "Not seen everywhere" + (gone() ? " either" : "") + ", the worst first: " + codes + ".");
    }
  }

  /** Whether a skipped one may leave no trace. */
  private boolean gone() {
    return announced.stream().anyMatch(a -> hidden(a) && unseen(a));
  }

  private String counts() {
    Map<Visibility, Long> n =
        announced.stream()
            .collect(Collectors.groupingBy(Announced::visibility, Collectors.counting()));
    long unseen = n.getOrDefault(Visibility.NOT_SEEN, 0L);
    List<String> counts = new ArrayList<>();
    counts.add(
        "Each mistake in each pass counted, "
            + n.getOrDefault(Visibility.SEEN, 0L)
            + " are seen, "
            + n.getOrDefault(Visibility.ASKED, 0L)
            + " asked about, "
            + unseen
            + " not seen");
    less(Ability.ANGLE, "an angle", unseen).ifPresent(counts::add);
    less(Ability.POSITION, "a position", unseen).ifPresent(counts::add);
    return String.join("; ", counts) + ".";
  }

  private Optional<String> less(Ability ability, String words, long unseen) {
    long left = with.apply(ability).stream().filter(SightSummary::unseen).count();
    return left < unseen
        ? Optional.of("with " + words + " in every reading " + left + " would not be seen")
        : Optional.empty();
  }

  private static boolean hidden(Announced a) {
    return a.mistake() == Mistake.HIDDEN_SKIP;
  }

  private static boolean unseen(Announced a) {
    return a.visibility() == Visibility.NOT_SEEN;
  }

  private static String place(Announced a) {
    return a.step() + ":" + a.pass();
  }
}
