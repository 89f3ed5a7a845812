package witnessmark.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import witnessmark.sight.Mistake;

/** What is announced of a skipped fastener hidden by a second hit, for the kinds of work. */
class SightOfScenesTest {
  private static String hiddenSkip(Scene scene) {
    Map<String, String> byStage = new TreeMap<>();
    Foretold.of(scene).stream()
        .filter(a -> a.mistake() == Mistake.HIDDEN_SKIP)
        .forEach(a -> byStage.put(a.step() + ":" + a.pass(), a.visibility().code()));
    assertThat(byStage)
        .containsOnlyKeys("plate:final", "pivot:snug", "pivot:final", "hub:final", "caliper:final");
    return new TreeSet<>(byStage.values()).stream().collect(Collectors.joining(" "));
  }

  @Test
  void onlyTorqueWithoutPositionsHidesIt() {
    Map<String, String> shown = new LinkedHashMap<>();
    Scenes.all().forEach(s -> shown.put(s.title(), hiddenSkip(s)));
    Map<String, String> expected = new LinkedHashMap<>();
    expected.put("angle, no windows, hard joints", "asked");
    expected.put("angle, no windows, soft joints, fasteners picked at random", "asked");
    // the pivot's passes have no window
    expected.put("angle, windows of 22 to 38 degrees, hard joints", "asked seen");
    expected.put(
        "angle, readings stored and delivered late, counters that begin anew, clocks that drift",
        "asked");
    expected.put("torque only, every position scanned", "seen");
    expected.put("angle, overlapping: fresh 9.5 ± 1.2 degrees, hit again 2.5 ± 0.9", "asked");
    expected.put("torque only, no positions", "not-seen");
    expected.put("angle, a wrong wrench at hand and one that nobody enrolled", "asked");
    assertThat(shown).isEqualTo(expected);
  }
}
