package wrenchsim.shop;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.truth.Happening;
import wrenchsim.truth.Happening.Act;
import wrenchsim.truth.Happening.Work;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;
import wrenchsim.wire.VerdictMessage;

/**
 * A person who does what a station expects, one turn of a wrench at a time, hears the verdicts and
 * makes mistakes. Nothing here waits.
 */
public final class Person {
  private final Rack rack;
  private final Hands hands;
  private final Mistakes mistakes;
  private final Habits habits;
  private final Random chance;
  private final Consumer<String> warn;
  private final Notes notes;
  private final Slips slips;
  private final Tries tries;
  private final Search search;
  private final Unheard unheard = new Unheard();
  private final Set<String> spoiled = new HashSet<>();
  private final Deque<Plan> plans = new ArrayDeque<>();
  private final List<Answer> answers = new ArrayList<>();
  private final Map<Long, Happening> asked = new HashMap<>();
  private Optional<Expected> last = Optional.empty();
  private String wrenchlessWork = "";

  /**
   * A person at a bench; everything that scatters follows from {@code seed}.
   *
   * @param sheets what people know of the procedures; may be shared
   * @param warn what is said when something cannot be done as asked
   */
  public Person(
      Rack rack,
      Parts parts,
      ShopClock clock,
      Mistakes mistakes,
      Habits habits,
      Sheets sheets,
      long seed,
      Consumer<String> warn) {
    this.rack = rack;
    this.hands = new Hands(parts, clock, Chance.of(seed, "hands"), unheard);
    this.mistakes = mistakes;
    this.habits = habits;
    this.chance = Chance.of(seed, "operator");
    this.warn = warn;
    this.notes = new Notes(sheets);
    this.slips = new Slips(rack, notes, Chance.of(seed, "slips"), warn);
    this.tries = new Tries(warn);
    this.search = new Search(rack, notes, hands);
  }

  /** Whether there is anything to do with a wrench while this is expected. */
  public boolean mayAct(ExpectMessage heard) {
    if (!plans.isEmpty() || rack.away().isPresent()) {
      return true;
    }
    if (habits.gatesFirst() && heard.others()) {
      return false;
    }
    return heard.isTighten() && !tries.isHopeless(heard) && hasWrench(heard);
  }

  /**
   * Does the next thing.
   *
   * @throws IllegalStateException when {@link #mayAct} says that there is nothing to do
   */
  public Deed act(ExpectMessage heard) {
    if (!mayAct(heard)) {
      throw new IllegalStateException(
          "there is nothing to do with a wrench while the state is " + heard.state());
    }
    notes.read(heard);
    if (!plans.isEmpty()) {
      return carryOut(plans.poll().whileExpecting(heard));
    }
    Optional<Tool> away = rack.away();
    if (away.isPresent()) {
      return outOfRange(heard, away.get());
    }
    Optional<Plan> loose = search.find(heard);
    if (loose.isPresent()) {
      return carryOut(loose.get());
    }
    undoing(heard);
    if (!plans.isEmpty()) {
      return carryOut(plans.poll());
    }
    Task task = pick(heard);
    tries.count(heard);
    return visit(task);
  }

  /** Hears a verdict; what it is about, where it is about this person's doing. */
  public Optional<Happening> hear(VerdictMessage verdict) {
    Optional<Happening> about =
        verdict.assigns().isPresent()
            ? Optional.ofNullable(asked.remove(verdict.assigns().get()))
            : unheard.take(verdict);
    about.ifPresent(h -> react(h, verdict));
    return about;
  }

  /** What the bridge asked and this person answers; each once. */
  public List<Answer> answers() {
    List<Answer> now = List.copyOf(answers);
    answers.clear();
    return now;
  }

  /** Forgets a unit that nobody will touch any more. */
  public void forget(String unit) {
    spoiled.removeIf(s -> s.startsWith(unit + " "));
  }

  private void react(Happening happening, VerdictMessage verdict) {
    Work work = happening.work();
    if (verdict.spoilsFastener()) {
      spoiled.add(work.unit().or(work::job).orElse("") + " " + work.fastener().orElse(""));
    }
    if (verdict.changesExpect() && !verdict.isLoosened()) {
      // Undoing alone is no progress: a joint that never fits would be turned to and fro for ever.
      tries.progress();
    }
    notes.mark(happening, verdict);
    if (verdict.isRechecked() && happening.act() == Act.TIGHTEN) {
      search.begin(work);
    }
    if (verdict.asks() && verdict.entry().isPresent()) {
      answers.add(new Answer(verdict.entry().get(), work.fastener().orElseThrow()));
      asked.put(verdict.entry().get(), happening);
    }
  }

  private boolean hasWrench(ExpectMessage heard) {
    if (heard.expect().stream().anyMatch(due -> rack.fit(due).isPresent())) {
      return true;
    }
    if (!Task.work(heard).equals(wrenchlessWork)) {
      wrenchlessWork = Task.work(heard);
      warn.accept(
          "no wrench here may do %s: give one with --wrench that is allowed there and whose range holds the band"
              .formatted(heard.expect().get(0).fastener()));
    }
    return false;
  }

  private Task pick(ExpectMessage heard) {
    List<Task> tasks =
        heard.expect().stream()
            .flatMap(due -> rack.fit(due).stream().map(tool -> new Task(heard, due, tool)))
            .toList();
    if (!habits.anyOrder()) {
      return tasks.get(0);
    }
    Task listed = tasks.get(chance.nextInt(tasks.size()));
    List<Expected> choice = notes.choice(heard, listed.due());
    Expected picked = choice.get(chance.nextInt(choice.size()));
    return rack.fit(picked).map(tool -> new Task(heard, picked, tool)).orElse(listed);
  }

  private void undoing(ExpectMessage heard) {
    for (Expected each : search.undo(heard)) {
      rack.fit(each)
          .map(tool -> new Task(heard, each, tool))
          .filter(task -> hands.isHeld(task, each.fastener()))
          .ifPresent(task -> plans.add(Plan.loosen(task, each.fastener(), Optional.empty())));
    }
  }

  /** Goes on by memory while the bridge cannot hear the wrench, as far as the group goes. */
  private Deed outOfRange(ExpectMessage heard, Tool away) {
    Optional<Task> next =
        last.flatMap(due -> notes.nextByMemory(heard, due))
            .flatMap(due -> rack.fit(due).map(tool -> new Task(heard, due, tool)))
            .filter(task -> task.tool() == away);
    return next.isPresent() ? visit(next.get()) : hands.comeBack(away);
  }

  private Deed visit(Task task) {
    String fastener = task.due().fastener();
    if (spoiled.contains(spoiledName(task, fastener)) && hands.isHeld(task, fastener)) {
      return carryOut(Plan.loosen(task, fastener, Optional.empty()));
    }
    Plan plan = slips.plan(task, mistakes.next(fastener));
    if (plan.is(Kind.DOUBLE)) {
      plans.add(plan);
    } else if (plan.is(Kind.LOOSEN)) {
      plans.add(Plan.loosen(plan.task(), plan.place(), plan.mistake()));
    }
    last = Optional.of(task.due());
    Deed deed = carryOut(plan);
    if (deed.awaited().isEmpty()) {
      notes.doneMeanwhile(task.due());
    } else {
      notes.backInRange();
    }
    return deed;
  }

  private Deed carryOut(Plan plan) {
    if (plan.act() == Act.LOOSEN) {
      spoiled.remove(spoiledName(plan.task(), plan.place()));
    }
    return hands.turn(plan, habits.scans());
  }

  private static String spoiledName(Task task, String fastener) {
    return Parts.unit(task.heard()) + " " + fastener;
  }
}
