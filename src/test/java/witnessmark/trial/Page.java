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
    lines.addAll(
        List.of(
            "- *Credited wrongly*: the bolt that was turned has a credit for that pass already, or is of another group. *Closed with one not tight*: a",
            "  job was closed while a bolt was untouched or loose.",
            "- *Credited to a look-alike neighbour*: a bolt of the group was tightened well, and the record has it under the name of another; by count all",
            "  end tight.",
            "- A *false alarm* is a good tightening that was not credited.",
            "- *Not announced*: a wrong credit or a crossed thread that left no trace, and `procedure check` had not said beforehand that it might.",
            "- *Given up*: the simulated person found no way on; a real one would ask.",
            "",
            "Goals: where angle or position tells, nothing credited wrongly and nothing closed with one not tight; at the overlap, at most 1 in 10,000 readings; at",
            "most 2 false alarms in 1,000 good tightenings; nothing that was not announced."));
    List<String> missed = Goals.missed(all);
    lines.add(missed.isEmpty() ? "All were reached." : "Missed:");
    missed.forEach(m -> lines.add("- " + m));
    lines.add("");
    lines.add(
        "| scene | jobs | closed | closed with one not tight | given up | readings | credited wrongly | not announced | false alarms in 1,000 | decided anew |");
    lines.add("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    all.forEach(
        (scene, t) ->
            lines.add(
                String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %d | %d | %d | %d | %.2f | %d |",
                    scene.title(),
                    t.jobs,
                    t.closed,
                    t.closedLoose,
                    t.abandoned,
                    t.readings,
                    t.of(Recorded.WRONG),
                    t.unannounced,
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
          lines.add("");
          lines.add(
              "Announced to leave no trace, somewhere in the procedure: "
                  + String.join(", ", new Foretold(scene).unseen())
                  + ".");
        });
    return lines;
  }
}
