package witnessmark.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The trial's page. */
final class Page {
  private Page() {}

  static List<String> of(Map<Scene, Tally> all, int jobs, long seed) {
    List<String> lines = new ArrayList<>();
    lines.add("# Shop-floor trial");
    lines.add("");
    lines.add(
        "Made by `mvn -q -B test-compile exec:exec@shop-floor -Dtrial.jobs="
            + jobs
            + " -Dtrial.seed="
            + seed
            + "`. The simulator's shop works against");
    lines.add(
        "the bridge's core by the published messages alone; afterwards its truth is compared with the record. All figures of the scenes are invented.");
    lines.add("");
    lines.add(
        "*Credited wrongly* means: a fastener pass counts as done by a reading that did not do it. *Credited to a look-alike neighbour* means: one of");
    lines.add(
        "the same group was tightened well, and the record has it under the name of another; all of the group end tight. A *false alarm* is a good tightening");
    lines.add("that was not credited.");
    lines.add("");
    lines.add(
        "| scene | jobs | closed | closed with a fastener not tight | given up | readings | credited wrongly | false alarms in 1000 good ones | decided anew |");
    lines.add("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    all.forEach(
        (scene, t) ->
            lines.add(
                String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %d | %d | %d | %.2f | %d |",
                    scene.title(),
                    t.jobs,
                    t.closed,
                    t.closedLoose,
                    t.abandoned,
                    t.readings,
                    t.of(Recorded.WRONG),
                    1000.0 * t.falseAlarms / Math.max(1, t.good()),
                    t.rereads)));
    all.forEach(
        (scene, t) -> {
          lines.add("");
          lines.add(
              "## "
                  + scene.title().substring(0, 1).toUpperCase(Locale.ROOT)
                  + scene.title().substring(1));
          lines.add("");
          lines.addAll(t.markdown());
        });
    return lines;
  }
}
