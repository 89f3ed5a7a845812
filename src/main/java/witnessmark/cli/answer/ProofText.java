package witnessmark.cli.answer;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.procedure.ProofRange;
import witnessmark.report.Table;

/** What the bolts of a procedure could bear, for people and for programs. */
public final class ProofText {
  private static final String FRICTION = "nut factor 0.10 to 0.30";
  private static final String CAUTION = "a check on typing, not a torque to use";

  private ProofText() {}

  /** A line for each kind of bolt, with the groups that use it; nothing where none is known. */
  public static void print(Page page, List<ProofRange> ranges) {
    if (ranges.isEmpty()) {
      return;
    }
    Map<List<String>, List<ProofRange>> kinds =
        ranges.stream()
            .collect(
                Collectors.groupingBy(
                    r -> List.of(r.bolt(), r.whole(), r.usual()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    Table table = new Table("BOLT", "PROOF LOAD", "75 % OF IT", "GROUPS");
    kinds.forEach(
        (kind, its) ->
            table.add(
                kind.get(0),
                kind.get(1),
                kind.get(2),
                its.stream().map(ProofRange::step).collect(Collectors.joining(", "))));
    page.say("note: torques that reach the proof load of the bolts, and 75 % of it");
    List<String> lines = table.toString().lines().toList();
    int groups = lines.get(0).indexOf("GROUPS") + 2;
    lines.forEach(l -> page.say("  " + l, groups));
    page.say("  " + CAUTION + "; " + FRICTION);
  }

  /** The same of one group, in a sentence. */
  public static String sentence(ProofRange range) {
    return range.step() + ": " + range.sentence() + " (" + FRICTION + "); this is " + CAUTION;
  }
}
