package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Tighten steps that a torque reading alone cannot tell apart. */
final class Overlaps {
  private final List<Stage> stages;
  private final List<BitSet> reach;
  private final BigDecimal[] low;
  private final BigDecimal[] high;

  private Overlaps(List<Stage> stages) {
    this.stages = stages;
    this.reach = reach(stages);
    this.low = new BigDecimal[stages.size()];
    this.high = new BigDecimal[stages.size()];
    for (Stage stage : stages) {
      if (stage.step() instanceof TightenStep t) {
        low[stage.number()] = t.passes().get(stage.pass()).band().low().newtonMetres();
        high[stage.number()] = t.passes().get(stage.pass()).band().high().newtonMetres();
      }
    }
  }

  static void find(List<Stage> stages, List<Finding> findings) {
    Overlaps overlaps = new Overlaps(stages);
    String last = "";
    for (Stage stage : stages) {
      if (stage.step() instanceof TightenStep step && !step.id().equals(last)) {
        last = step.id();
        overlaps.of(step, findings);
      }
    }
  }

  private void of(TightenStep step, List<Finding> findings) {
    List<String> others = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Stage a : stages) {
      for (int n = a.number() + 1; n < stages.size() && a.step().id().equals(step.id()); n++) {
        Stage b = stages.get(n);
        if (b.step() instanceof TightenStep other
            && !other.id().equals(step.id())
            && !seen.contains(other.id())
            && together(a, b)
            && alike(a, b)
            && !parted(step, other)) {
          seen.add(other.id());
          others.add("\"" + other.id() + "\" (" + band(a) + " beside " + band(b) + ")");
        }
      }
    }
    if (!others.isEmpty()) {
      findings.add(
          new Finding(
              step.id(),
              "can be open at the same time as "
                  + Sentence.list(others)
                  + ": torque bands overlap and no wrench parts them, so that a reading without a"
                  + " position could belong to either; let one wait for the other, or give them"
                  + " different wrenches"));
    }
  }

  private boolean together(Stage a, Stage b) {
    return !reach.get(a.number()).get(b.number()) && !reach.get(b.number()).get(a.number());
  }

  private boolean alike(Stage a, Stage b) {
    return low[a.number()].compareTo(high[b.number()]) <= 0
        && low[b.number()].compareTo(high[a.number()]) <= 0;
  }

  private static boolean parted(TightenStep one, TightenStep other) {
    return !one.wrenches().isEmpty()
        && !other.wrenches().isEmpty()
        && Collections.disjoint(one.wrenches(), other.wrenches());
  }

  private static String band(Stage stage) {
    TightenStep step = (TightenStep) stage.step();
    Pass pass = step.passes().get(stage.pass());
    return pass.name() + " " + pass.band();
  }

  /** For each stage all it waits for, directly or through others; there is no cycle. */
  private static List<BitSet> reach(List<Stage> stages) {
    List<List<Integer>> waiting = new ArrayList<>();
    List<BitSet> reach = new ArrayList<>();
    int[] open = new int[stages.size()];
    for (Stage stage : stages) {
      waiting.add(new ArrayList<>());
      reach.add(new BitSet());
      open[stage.number()] = stage.requires().size();
    }
    Deque<Integer> ready = new ArrayDeque<>();
    for (Stage stage : stages) {
      stage.requires().forEach(r -> waiting.get(r).add(stage.number()));
      if (stage.requires().isEmpty()) {
        ready.add(stage.number());
      }
    }
    while (!ready.isEmpty()) {
      int done = ready.remove();
      for (int next : waiting.get(done)) {
        reach.get(next).or(reach.get(done));
        reach.get(next).set(done);
        if (--open[next] == 0) {
          ready.add(next);
        }
      }
    }
    return reach;
  }
}
