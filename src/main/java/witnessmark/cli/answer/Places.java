package witnessmark.cli.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.TightenStep;
import witnessmark.sight.Announced;

/** The groups of a procedure and their passes, in file order, and where in them something holds. */
public final class Places {
  /** How many things a list in a sentence names at most. */
  public static final int SHOWN = 8;

  private final Map<String, TightenStep> groups = new LinkedHashMap<>();

  public Places(Procedure procedure) {
    procedure.steps().stream()
        .filter(TightenStep.class::isInstance)
        .map(TightenStep.class::cast)
        .forEach(t -> groups.put(t.id(), t));
  }

  /** The ids of the groups. */
  public Set<String> groups() {
    return groups.keySet();
  }

  /** {@code plate, stay (snug)}: one that is meant with all its passes goes by its id alone. */
  public String words(List<Announced> where) {
    Map<String, List<String>> passes = new LinkedHashMap<>();
    where.forEach(a -> passes.computeIfAbsent(a.step(), s -> new ArrayList<>()).add(a.pass()));
    boolean all = groups.values().stream().allMatch(g -> whole(g, passes.get(g.id())));
    return all && groups.size() > 1
        ? "every group"
        : list(
            passes.entrySet().stream()
                .map(e -> words(groups.get(e.getKey()), e.getValue()))
                .toList());
  }

  private static boolean whole(TightenStep group, List<String> passes) {
    return passes != null && passes.size() == group.passes().size();
  }

  private static String words(TightenStep group, List<String> passes) {
    return whole(group, passes)
        ? group.id()
        : (group.id() + " (" + String.join(", ", passes) + ")").replace(' ', Page.BOUND);
  }

  /** The ids of the groups in which they are. */
  public static String groups(List<Announced> where) {
    return list(where.stream().map(Announced::step).distinct().toList());
  }

  /** Things with commas between; of many, the first and how many more there are. */
  public static String list(List<String> things) {
    return things.size() <= SHOWN
        ? String.join(", ", things)
        : String.join(", ", things.subList(0, SHOWN)) + " and " + (things.size() - SHOWN) + " more";
  }

  /** Whether a later pass goes over the same group. */
  public boolean followed(Announced at) {
    List<Pass> passes = groups.get(at.step()).passes();
    return !passes.get(passes.size() - 1).name().equals(at.pass());
  }

  /** Whether the pass is a check. */
  public boolean check(Announced at) {
    return groups.get(at.step()).passes().stream()
        .anyMatch(p -> p.check() && p.name().equals(at.pass()));
  }
}
