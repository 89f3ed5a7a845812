package witnessmark.procedure;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;

/** Checks what the steps of a file say of each other. */
final class References {
  /** Guessing costs time; past this many, a file needs another cure. */
  private static final int GUESSES = 50;

  private final List<Draft> drafts;
  private final Waits all;
  private final Map<String, Draft> byId = new LinkedHashMap<>();
  private int guesses;

  private References(List<Draft> drafts) {
    this.drafts = drafts;
    this.all = new Waits(drafts.stream().map(References::names).toList());
  }

  /** Records every fault among the steps at its place. */
  static void check(List<Draft> drafts) {
    References references = new References(drafts);
    references.ids();
    references.prerequisites();
    references.cycles();
  }

  private static Waits.StepNames names(Draft draft) {
    List<Waits.PassNames> passes =
        draft.passes().stream().map(p -> new Waits.PassNames(p.name(), p.after())).toList();
    return new Waits.StepNames(draft.id(), draft.after(), draft.tighten(), passes);
  }

  private void ids() {
    for (Draft draft : drafts) {
      Draft first = draft.id().isEmpty() ? null : byId.putIfAbsent(draft.id(), draft);
      if (first != null) {
        draft
            .section()
            .fault(
                "id",
                "step id \""
                    + draft.id()
                    + "\" is used twice, first on line "
                    + first.section().line("id"),
                "give each step an id of its own");
      }
    }
  }

  private void prerequisites() {
    for (int s = 0; s < drafts.size(); s++) {
      Draft draft = drafts.get(s);
      int stage = all.first(s);
      list(draft.section(), draft.after().orElse(List.of()), stage);
      for (Draft.DraftPass pass : draft.passes()) {
        list(pass.section(), pass.after(), stage++);
      }
    }
  }

  private void list(Section section, List<Prerequisite> after, int stage) {
    for (int i = 0; i < after.size(); i++) {
      OptionalInt target = all.stage(after.get(i));
      if (target.isEmpty()) {
        unknown(section, i, after.get(i));
      } else if (all.waitsForItself(stage, target.getAsInt())) {
        section.fault(
            "after",
            i,
            "\"" + all.key(stage) + "\" waits for itself through \"" + after.get(i) + "\"",
            "take \"" + after.get(i) + "\" out");
      }
    }
  }

  private void unknown(Section section, int item, Prerequisite wanted) {
    Optional<Draft> step =
        drafts.stream().filter(d -> !d.id().isEmpty() && d.id().equals(wanted.step())).findFirst();
    if (step.isEmpty()) {
      section.fault(
          "after",
          item,
          "no step has the id \"" + wanted.step() + "\"",
          hint(wanted.step(), byId.keySet(), "name a step of this file"));
    } else if (step.get().tighten()) {
      String name = wanted.pass().orElse("");
      List<String> names = step.get().passes().stream().map(Draft.DraftPass::name).toList();
      section.fault(
          "after",
          item,
          "step \"" + wanted.step() + "\" has no pass \"" + name + "\"",
          hint(name, names, "name a pass of that step"));
    } else if (step.get().kind().isPresent()) {
      section.fault(
          "after",
          item,
          "\"" + wanted + "\" names a pass, but step \"" + wanted.step() + "\" has none",
          "write \"" + wanted.step() + "\"");
    }
  }

  private String hint(String word, Collection<String> allowed, String otherwise) {
    return guesses++ < GUESSES && !allowed.isEmpty() ? Nearest.hint(word, allowed) : otherwise;
  }

  private void cycles() {
    Waits waits = all.withoutSelfWaits();
    Cycles cycles = Cycles.of(waits);
    cycles.cycles().forEach(c -> cycle(waits, c));
    List<String> blocked = new ArrayList<>();
    int firstBlocked = -1;
    for (int s = 0; s < drafts.size(); s++) {
      int from = waits.first(s);
      int to = from + drafts.get(s).passes().size();
      int stage = cycles.blocked().nextSetBit(from);
      boolean inCycle = IntStream.range(from, to).anyMatch(cycles.members()::get);
      if (stage >= 0 && stage < to && !inCycle) {
        firstBlocked = firstBlocked < 0 ? s : firstBlocked;
        blocked.add("\"" + (stage == from ? drafts.get(s).id() : waits.key(stage)) + "\"");
      }
    }
    if (firstBlocked >= 0) {
      drafts
          .get(firstBlocked)
          .section()
          .fault(
              "id",
              Sentence.list(blocked)
                  + " can never be reached, waiting for a cycle of prerequisites",
              "mend the cycle");
    }
  }

  private void cycle(Waits waits, List<Integer> cycle) {
    int first = cycle.get(0);
    int second = cycle.get(1);
    List<String> stops = new ArrayList<>(cycle.stream().map(waits::key).toList());
    stops.add(stops.get(0));
    String what = "prerequisites go in a circle: " + Sentence.way(stops) + " (-> means waits for)";
    Draft draft = drafts.get(waits.step(first));
    Draft.DraftPass pass = draft.passes().get(waits.pass(first));
    int inPass = item(waits, pass.after(), second);
    if (inPass >= 0) {
      pass.section().fault("after", inPass, what, mend(waits, cycle));
    } else {
      int inStep = item(waits, draft.after().orElse(List.of()), second);
      draft.section().fault("after", inStep, what, mend(waits, cycle));
    }
  }

  private static int item(Waits waits, List<Prerequisite> after, int target) {
    return IntStream.range(0, after.size())
        .filter(i -> waits.stage(after.get(i)).equals(OptionalInt.of(target)))
        .findFirst()
        .orElse(-1);
  }

  /** Mere sequence is the likeliest mistake: the step later in the file was not to wait. */
  private String mend(Waits waits, List<Integer> cycle) {
    for (int i = cycle.size() - 1; i >= 0; i--) {
      int later = cycle.get(i);
      int earlier = cycle.get((i + 1) % cycle.size());
      if (waits.sequence(later) && !waits.physical(later).contains(earlier)) {
        String id = drafts.get(waits.step(later)).id();
        String before = drafts.get(waits.step(earlier)).id();
        int first = cycle.get(0);
        String free = "";
        if (waits.step(first) == waits.step(earlier)
            && waits.pass(first) > 0
            && !waits.reaches(first - 1, later)) {
          free = "after = [\"" + waits.key(first - 1) + "\"] or ";
        }
        return "\""
            + id
            + "\" waits for all of \""
            + before
            + "\" only because it comes later in the file: give it "
            + free
            + "after = []";
      }
    }
    return "take one of these prerequisites out";
  }
}
