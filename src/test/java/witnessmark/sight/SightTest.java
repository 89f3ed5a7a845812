package witnessmark.sight;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import witnessmark.procedure.ProcedureFile;

/** What is announced, in words; that it is true is for {@code SightOnBenchTest} to show. */
class SightTest {
  private static final String HEAD = "[procedure]\nid = \"P\"\nrevision = \"A\"\ntitle = \"T\"\n";
  private static final List<Ability> ABILITIES =
      List.of(Ability.TORQUE_ONLY, Ability.ANGLE, Ability.POSITION, Ability.BREAKAWAY);

  private static String step(String id, int n, String lines) {
    return "[[step]]\nid = \""
        + id
        + "\"\nkind = \"tighten\"\ntitle = \"T\"\nfasteners = "
        + n
        + "\n"
        + lines
        + "\n";
  }

  private static String pass(String name, String torque, String more) {
    return "[[step.pass]]\nname = \""
        + name
        + "\"\ntorque = \""
        + torque
        + " N.m\"\ntolerance = \"10 %\"\n"
        + more;
  }

  private static List<Announced> of(String steps, Map<String, Ability> wrenches) {
    return Sight.of(ProcedureFile.parse("p.toml", HEAD + steps), Rack.of(wrenches));
  }

  private static Set<String> codes(List<Announced> announced, String stage) {
    return announced.stream()
        .filter(a -> stage.equals(a.step() + ":" + a.pass()))
        .map(a -> a.mistake().code())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void aSingleFastenerHasFewerMistakesThanAGroup() {
    assertThat(codes(of(step("a", 1, pass("final", "50", "")), Map.of()), "a:final"))
        .containsExactly(
            "cross-threaded",
            "double-hit",
            "missing-washer",
            "over",
            "skip",
            "tight-before",
            "under");
    assertThat(codes(of(step("a", 2, pass("final", "50", "")), Map.of()), "a:final"))
        .contains("hidden-skip", "exchanged", "again-after-under")
        .doesNotContain("wrong-group", "too-early", "wrong-place", "loose-at-check");
  }

  @Test
  void aCheckPassHasMistakesOfItsOwn() {
    String passes = pass("final", "50", "") + pass("check", "50", "check = true\n");
    assertThat(codes(of(step("a", 2, passes), Map.of()), "a:check"))
        .contains("loose-at-check", "hidden-skip")
        .doesNotContain("cross-threaded", "tight-before", "again-after-under", "missing-washer");
  }

  @Test
  void theWeakestWrenchThatMayBeUsedDecidesAndAnUnknownOneShowsTorqueOnly() {
    String group = pass("final", "50", "");
    String both = step("a", 2, "wrenches = [\"T1\", \"T2\"]\n" + group);
    Map<String, Ability> known = Map.of("T1", Ability.ANGLE, "T3", Ability.POSITION);
    assertThat(hidden(both, known)).isEqualTo(Visibility.NOT_SEEN);
    assertThat(hidden(both, Map.of("T1", Ability.ANGLE, "T2", Ability.ANGLE)))
        .isEqualTo(Visibility.ASKED);
    assertThat(hidden(step("a", 2, "wrenches = [\"T3\"]\n" + group), known))
        .isEqualTo(Visibility.SEEN);
    assertThat(hidden(step("a", 2, group), known)).isEqualTo(Visibility.NOT_SEEN);
  }

  private static Visibility hidden(String steps, Map<String, Ability> wrenches) {
    return of(steps, wrenches).stream()
        .filter(a -> a.mistake() == Mistake.HIDDEN_SKIP)
        .findFirst()
        .orElseThrow()
        .visibility();
  }

  @Test
  void secondsBetweenIsSaidToShowOnlyWhatComesTooSoon() {
    String soon = step("a", 2, "seconds-between = \"1.5\"\n" + pass("final", "50", ""));
    assertThat(of(soon, Map.of()))
        .filteredOn(a -> a.mistake() == Mistake.DOUBLE_HIT)
        .extracting(Announced::sentence)
        .containsExactly(
            "it counts for the next of the group; at best a reading too many shows in the end."
                + " Seen only if it comes within 1.5 s");
  }

  @Test
  void everySentenceFitsTwoLines() {
    List<Announced> all = new ArrayList<>();
    for (Ability ability : ABILITIES) {
      for (String window :
          List.of(
              "",
              "angle-min = \"20\"\nangle-max = \"70\"\n",
              "angle-min = \"2\"\nangle-max = \"70\"\n")) {
        for (String recheck : List.of("", "recheck-angle = \"0\"\n")) {
          for (String after : List.of("", "after = []\n")) {
            for (String torque : List.of("50", "30", "70")) {
              String passes =
                  pass("snug", "30", "")
                      + pass("final", "50", window)
                      + pass("check", "50", "check = true\norder = \"any\"\n");
              all.addAll(
                  of(
                      step("front-carrier", 2, recheck + passes)
                          + step(
                              "rear-carrier-bolts",
                              2,
                              after + recheck + pass("final", torque, window)),
                      Map.of("T", ability)));
            }
          }
        }
      }
    }
    assertThat(all.stream().map(Announced::mistake).distinct())
        .containsExactlyInAnyOrder(Mistake.values());
    assertThat(all)
        .allSatisfy(
            a -> {
              assertThat(a.sentence()).hasSizeLessThanOrEqualTo(190).doesNotEndWith(".");
              assertThat(a.sentence().charAt(0)).isNotEqualTo(' ');
            });
  }
}
