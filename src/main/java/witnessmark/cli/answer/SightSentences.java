package witnessmark.cli.answer;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.sight.Announced;
import witnessmark.sight.Mistake;
import witnessmark.sight.Visibility;

/** What is announced of groups, in full sentences. */
public final class SightSentences {
  private SightSentences() {}

  /** Prints them, the unseen first. */
  public static void print(Page page, List<Announced> announced) {
    announced.stream()
        .collect(Collectors.groupingBy(Announced::step, LinkedHashMap::new, Collectors.toList()))
        .forEach(
            (group, its) -> {
              page.say(group);
              SightText.byVisibility(its).forEach((v, each) -> group(page, v, each));
              page.space();
            });
  }

  private static void group(Page page, Visibility visibility, List<Announced> its) {
    Map<List<String>, List<Announced>> alike =
        its.stream()
            .sorted(Comparator.comparing(Announced::mistake, Gravity.ORDER))
            .collect(
                Collectors.groupingBy(
                    a -> List.of(a.mistake().code(), a.sentence()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    alike
        .values()
        .forEach(
            a -> {
              Mistake mistake = a.get(0).mistake();
              String passes = a.stream().map(Announced::pass).collect(Collectors.joining(", "));
              page.say(
                  "  "
                      + SightText.words(visibility)
                      + ": "
                      + mistake.code()
                      + " ("
                      + passes
                      + "): "
                      + mistake.words(),
                  4);
              page.say("    " + a.get(0).sentence(), 4);
            });
  }
}
