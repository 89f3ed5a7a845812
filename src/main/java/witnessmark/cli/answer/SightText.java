package witnessmark.cli.answer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import witnessmark.sight.Announced;
import witnessmark.sight.Mistake;
import witnessmark.sight.Visibility;

/** What is announced of a procedure: by group in codes, then each code once in words. */
public final class SightText {
  private static final int INDENT = 12;

  /** Past this, the names of passes push the codes of mistakes out of their column. */
  private static final int WIDEST = 24;

  private final Page page;
  private final Places places;
  private final List<Announced> announced;

  /**
   * @param announced what is to be told, in file order
   */
  public SightText(Page page, Places places, List<Announced> announced) {
    this.page = page;
    this.places = places;
    this.announced = List.copyOf(announced);
  }

  /** Mistakes that passes of a group show alike. */
  private record Row(Visibility visibility, String passes, List<Mistake> mistakes) {
    String codes() {
      return mistakes.stream().map(Mistake::code).collect(Collectors.joining(", "));
    }
  }

  /** The groups in codes, then the codes in words. */
  public void print() {
    if (announced.isEmpty()) {
      return;
    }
    page.say(legend());
    page.space();
    groups();
    page.space();
    mistakes();
    page.space();
    page.say("With --step NAME one group is told in full sentences.");
    page.space();
  }

  private String legend() {
    return byVisibility(announced).keySet().stream()
        .map(v -> words(v) + ": " + meaning(v))
        .collect(Collectors.joining("; ", "", "."));
  }

  private static String meaning(Visibility visibility) {
    return switch (visibility) {
      case NOT_SEEN -> "it may leave no trace";
      case ASKED -> "a person is asked, and the job cannot close before the answer";
      case SEEN -> "it is flagged, or credited where it was";
    };
  }

  /** The groups; those that are alike in everything stand together. */
  private void groups() {
    Map<List<Row>, List<String>> alike = new LinkedHashMap<>();
    announced.stream()
        .collect(Collectors.groupingBy(Announced::step, LinkedHashMap::new, Collectors.toList()))
        .forEach((g, its) -> alike.computeIfAbsent(rows(its), r -> new ArrayList<>()).add(g));
    int widest =
        alike.keySet().stream()
            .flatMap(List::stream)
            .mapToInt(r -> r.passes().length())
            .filter(w -> w <= WIDEST)
            .max()
            .orElse(0);
    alike.forEach(
        (rows, groups) -> {
          page.say(String.join(", ", groups));
          Visibility last = null;
          for (Row row : rows) {
            row(row, row.visibility() == last, widest);
            last = row.visibility();
          }
        });
  }

  private void row(Row row, boolean further, int widest) {
    String passes = row.passes() + " ".repeat(Math.max(0, widest - row.passes().length()));
    String label = further ? " ".repeat(INDENT) : label(row.visibility());
    page.say(label + passes + "  " + row.codes(), INDENT + widest + 2);
  }

  private static List<Row> rows(List<Announced> group) {
    List<Row> rows = new ArrayList<>();
    byVisibility(group)
        .forEach(
            (visibility, its) -> {
              Map<Mistake, List<String>> passes = new TreeMap<>(Gravity.ORDER);
              its.forEach(
                  a -> passes.computeIfAbsent(a.mistake(), m -> new ArrayList<>()).add(a.pass()));
              Map<String, List<Mistake>> mistakes = new LinkedHashMap<>();
              passes.forEach(
                  (m, p) ->
                      mistakes
                          .computeIfAbsent(String.join(", ", p), x -> new ArrayList<>())
                          .add(m));
              mistakes.forEach((p, m) -> rows.add(new Row(visibility, p, m)));
            });
    return rows;
  }

  /** Each mistake in words, the worst first, and why it is shown or not. */
  private void mistakes() {
    Map<Mistake, List<Announced>> mistakes =
        announced.stream()
            .collect(
                Collectors.groupingBy(
                    Announced::mistake, () -> new TreeMap<>(Gravity.ORDER), Collectors.toList()));
    mistakes.forEach(
        (mistake, its) -> {
          page.say(mistake.code() + ": " + mistake.words(), 2);
          byVisibility(its).forEach(this::reasons);
        });
  }

  private void reasons(Visibility visibility, List<Announced> its) {
    Map<String, List<Announced>> patterns =
        its.stream()
            .collect(
                Collectors.groupingBy(Announced::pattern, LinkedHashMap::new, Collectors.toList()));
    patterns
        .values()
        .forEach(
            alike -> {
              boolean only = patterns.size() == 1;
              page.say(label(visibility) + reason(alike, only), INDENT);
            });
  }

  /** A reason, with the groups it holds for unless the mistake has no other. */
  private String reason(List<Announced> alike, boolean only) {
    Map<String, List<Announced>> others =
        alike.stream()
            .collect(
                Collectors.groupingBy(Announced::other, LinkedHashMap::new, Collectors.toList()));
    if (others.size() > 1) {
      String more = others.size() > Places.SHOWN ? "; and others]" : "]";
      return alike.get(0).sentence("the other")
          + others.entrySet().stream()
              .limit(Places.SHOWN)
              .map(e -> e.getKey().replace(' ', Page.BOUND) + " for " + places.words(e.getValue()))
              .collect(Collectors.joining("; ", " [the other: ", more));
    }
    return alike.get(0).sentence() + (only ? "" : " [" + places.words(alike) + "]");
  }

  /** The unseen first. */
  static Map<Visibility, List<Announced>> byVisibility(List<Announced> all) {
    return all.stream()
        .collect(
            Collectors.groupingBy(
                Announced::visibility,
                () -> new TreeMap<>(Comparator.reverseOrder()),
                Collectors.toList()));
  }

  private static String label(Visibility visibility) {
    String words = "  " + words(visibility);
    return words + " ".repeat(INDENT - words.length());
  }

  public static String words(Visibility visibility) {
    return visibility.code().replace('-', ' ');
  }
}
