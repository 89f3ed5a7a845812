package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.torque.Adapter;

/**
 * How the tighten stages of a procedure stand to each other: which wait for which, and which a
 * reading of torque could be meant for alike.
 */
public final class Layout {
  /** The share of a reading at which a fastener must be held to be hit again, as match has it. */
  public static final BigDecimal HELD = new BigDecimal("0.8");

  private final List<Stage> stages;
  private final List<BitSet> reach;
  private final BigDecimal[] low;
  private final BigDecimal[] high;

  public Layout(List<Stage> stages) {
    this.stages = stages;
    this.reach = reach(stages);
    this.low = new BigDecimal[stages.size()];
    this.high = new BigDecimal[stages.size()];
    tightening()
        .forEach(
            s -> {
              low[s.number()] = pass(s).band().low().newtonMetres();
              high[s.number()] = pass(s).band().high().newtonMetres();
            });
  }

  /** The tighten stages in file order. */
  public Stream<Stage> tightening() {
    return stages.stream().filter(s -> s.step() instanceof TightenStep);
  }

  public static TightenStep step(Stage stage) {
    return (TightenStep) stage.step();
  }

  public static Pass pass(Stage stage) {
    return step(stage).passes().get(stage.pass());
  }

  /** Whether {@code one} is complete before {@code other} may begin. */
  public boolean before(Stage one, Stage other) {
    return reach.get(other.number()).get(one.number());
  }

  /** Whether both may be open at the same time. */
  public boolean together(Stage one, Stage other) {
    return one.number() != other.number() && !before(one, other) && !before(other, one);
  }

  /** Whether one wrench may be used on both. */
  public static boolean share(Stage one, Stage other) {
    List<String> first = step(one).wrenches();
    List<String> second = step(other).wrenches();
    return first.isEmpty() || second.isEmpty() || !Collections.disjoint(first, second);
  }

  /** Whether a wrench could show one torque for both, adapters reckoned in. */
  public boolean alike(Stage one, Stage other) {
    return !over(low(one), one, high(other), other) && !over(low(other), other, high(one), one);
  }

  /** Whether a torque below the first one's band may be right for the other. */
  public boolean reachesBelow(Stage one, Stage other) {
    return over(low(one), one, low(other), other);
  }

  /** Whether a torque above the first one's band may be right for the other. */
  public boolean reachesAbove(Stage one, Stage other) {
    return over(high(other), other, high(one), one);
  }

  /**
   * Whether one that is tight in the first stage may be taken to be hit by a torque of the second
   * that its own band does not hold: which of the two it was is asked then.
   */
  public boolean confuses(Stage tight, Stage hit) {
    boolean could = !over(low(hit).multiply(HELD), hit, high(tight), tight);
    return could && (reachesBelow(tight, hit) || reachesAbove(tight, hit));
  }

  /** Whether one torque, as a wrench shows it, is more than another. */
  public static boolean over(BigDecimal torque, Stage there, BigDecimal other, Stage elsewhere) {
    Optional<Adapter> its = step(there).care().tool().adapter();
    Optional<Adapter> others = step(elsewhere).care().tool().adapter();
    return its.equals(others)
        ? torque.compareTo(other) > 0
        : its.orElse(Adapter.NONE).compareAtDrive(torque, others.orElse(Adapter.NONE), other) > 0;
  }

  /** Lower limit at the fastener, newton metres. */
  public BigDecimal low(Stage stage) {
    return low[stage.number()];
  }

  /** Upper limit at the fastener, newton metres. */
  public BigDecimal high(Stage stage) {
    return high[stage.number()];
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
