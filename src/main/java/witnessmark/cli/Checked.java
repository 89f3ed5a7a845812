package witnessmark.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.procedure.Ability;
import witnessmark.procedure.Announced;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Mistake;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProofRange;
import witnessmark.procedure.Visibility;

/** What a check of a procedure says, for people and for programs. */
final class Checked {
  private Checked() {}

  /** One mistake in the passes of a step that show it alike. */
  record Line(
      String step, List<String> passes, Mistake mistake, Visibility visibility, String sentence) {
    @Override
    public String toString() {
      return visibility.code()
          + ": "
          + mistake.code()
          + " ("
          + String.join(", ", passes)
          + "): "
          + mistake.words()
          + "\n    "
          + sentence;
    }
  }

  /**
   * The lines by step in file order, the unseen first.
   *
   * @param all whether what is seen is told, too
   */
  static List<Line> lines(List<Announced> announced, boolean all) {
    Map<String, Map<Announced, List<String>>> steps = new LinkedHashMap<>();
    announced.stream()
        .filter(a -> all || a.visibility() != Visibility.SEEN)
        .forEach(
            a ->
                steps
                    .computeIfAbsent(a.step(), s -> new LinkedHashMap<>())
                    .computeIfAbsent(
                        new Announced(a.mistake(), a.step(), "", a.visibility(), a.sentence()),
                        s -> new ArrayList<>())
                    .add(a.pass()));
    List<Line> lines = new ArrayList<>();
    steps.forEach(
        (step, alike) -> {
          List<Line> its = new ArrayList<>();
          alike.forEach(
              (a, passes) ->
                  its.add(new Line(step, passes, a.mistake(), a.visibility(), a.sentence())));
          its.sort(Comparator.comparing(Line::visibility).reversed());
          lines.addAll(its);
        });
    return lines;
  }

  static Map<String, Object> json(
      Procedure procedure,
      Map<String, Ability> abilities,
      List<Finding> findings,
      List<Announced> announced) {
    Map<String, String> wrenches = new LinkedHashMap<>();
    abilities.forEach((serial, ability) -> wrenches.put(serial, RackOption.words(ability)));
    return JsonOption.object(
        "procedure",
        procedure.id(),
        "revision",
        procedure.revision(),
        "wrenches",
        wrenches,
        "findings",
        findings.stream()
            .map(
                f ->
                    JsonOption.object(
                        "code", f.doubt().code(), "step", f.step(), "text", f.sentence()))
            .toList(),
        "notes",
        ProofRange.of(procedure).stream().map(r -> r.toString().replace("\n ", "")).toList(),
        "mistakes",
        announced.stream()
            .map(
                a ->
                    JsonOption.object(
                        "code",
                        a.mistake().code(),
                        "step",
                        a.step(),
                        "pass",
                        a.pass(),
                        "shown",
                        a.visibility().code(),
                        "text",
                        a.sentence()))
            .toList());
  }
}
