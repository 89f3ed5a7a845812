package witnessmark.procedure;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalInt;

/**
 * The stages that wait for themselves, and those that wait for such a stage and so can never be
 * reached.
 *
 * @param cycles one for each set of stages that all wait for each other; in each, every stage waits
 *     for the next and the last for the first, and the first waits for the second by an explicit
 *     {@code after}
 * @param members every stage that waits for itself
 * @param blocked every other stage that waits for one of them
 */
record Cycles(List<List<Integer>> cycles, BitSet members, BitSet blocked) {

  static Cycles of(Waits waits) {
    Components components = new Components(waits);
    List<List<Integer>> cycles = new ArrayList<>();
    BitSet members = new BitSet();
    BitSet begun = new BitSet();
    for (int stage = 0; stage < waits.stages(); stage++) {
      OptionalInt back = components.back(stage);
      if (back.isPresent()) {
        int own = components.component[stage];
        for (int s = 0; s < waits.stages() && !begun.get(own); s++) {
          members.set(s, members.get(s) || components.component[s] == own);
        }
        if (!begun.get(own)) {
          begun.set(own);
          cycles.add(components.way(stage, back.getAsInt()));
        }
      }
    }
    return new Cycles(cycles, members, blocked(waits, members));
  }

  private static BitSet blocked(Waits waits, BitSet members) {
    List<List<Integer>> waiting = new ArrayList<>();
    for (int s = 0; s < waits.stages(); s++) {
      waiting.add(new ArrayList<>());
    }
    for (int s = 0; s < waits.stages(); s++) {
      for (int required : waits.requires(s)) {
        waiting.get(required).add(s);
      }
    }
    BitSet blocked = (BitSet) members.clone();
    Deque<Integer> open = new ArrayDeque<>(members.stream().boxed().toList());
    while (!open.isEmpty()) {
      for (int s : waiting.get(open.remove())) {
        if (!blocked.get(s)) {
          blocked.set(s);
          open.add(s);
        }
      }
    }
    blocked.andNot(members);
    return blocked;
  }

  /** Strongly connected components by Tarjan's algorithm, without recursion. */
  private static final class Components {
    private final Waits waits;
    private final int[] component;
    private final int[] index;
    private final int[] low;
    private final Deque<Integer> path = new ArrayDeque<>();
    private int next;

    Components(Waits waits) {
      this.waits = waits;
      component = new int[waits.stages()];
      index = new int[waits.stages()];
      low = new int[waits.stages()];
      Arrays.fill(component, -1);
      Arrays.fill(index, -1);
      for (int stage = 0; stage < waits.stages(); stage++) {
        if (index[stage] < 0) {
          visit(stage);
        }
      }
    }

    private record Frame(int stage, Iterator<Integer> rest) {}

    private Frame enter(int stage) {
      index[stage] = next;
      low[stage] = next++;
      path.push(stage);
      return new Frame(stage, waits.requires(stage).iterator());
    }

    private void visit(int from) {
      Deque<Frame> frames = new ArrayDeque<>();
      frames.push(enter(from));
      while (!frames.isEmpty()) {
        Frame frame = frames.peek();
        if (frame.rest().hasNext()) {
          int to = frame.rest().next();
          if (index[to] < 0) {
            frames.push(enter(to));
          } else if (component[to] < 0) {
            low[frame.stage()] = Math.min(low[frame.stage()], index[to]);
          }
        } else {
          frames.pop();
          leave(frame.stage());
          if (!frames.isEmpty()) {
            int parent = frames.peek().stage();
            low[parent] = Math.min(low[parent], low[frame.stage()]);
          }
        }
      }
    }

    private void leave(int stage) {
      if (low[stage] == index[stage]) {
        int member;
        do {
          member = path.pop();
          component[member] = stage;
        } while (member != stage);
      }
    }

    /**
     * What the stage waits for that is itself or later in the file and waits for it in turn. Every
     * cycle has such a stage, since sequence and passes only ever wait for something earlier.
     */
    OptionalInt back(int stage) {
      return waits.requires(stage).stream()
          .mapToInt(Integer::intValue)
          .filter(to -> to >= stage && component[to] == component[stage])
          .findFirst();
    }

    /** The shortest way from {@code first} over {@code second} on to where it waits for first. */
    List<Integer> way(int first, int second) {
      int[] from = new int[waits.stages()];
      Arrays.fill(from, -1);
      Deque<Integer> open = new ArrayDeque<>(List.of(second));
      from[second] = second;
      while (from[first] < 0) {
        int stage = open.remove();
        for (int to : waits.requires(stage)) {
          if (from[to] < 0 && component[to] == component[first]) {
            from[to] = stage;
            open.add(to);
          }
        }
      }
      List<Integer> way = new ArrayList<>();
      for (int stage = from[first]; stage != second; stage = from[stage]) {
        way.add(stage);
      }
      if (first != second) {
        way.add(second);
        way.add(first);
      } else {
        way.add(first);
      }
      Collections.reverse(way);
      return List.copyOf(way);
    }
  }
}
