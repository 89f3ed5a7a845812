package wrenchsim.shop;

import java.io.IOException;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.truth.Truth;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Reading;

/** A person who does what the station expects, one fastener at a time, and makes mistakes. */
public final class Operator {
  private static final int MOST_TRIES = 6;

  private final Bench bench;
  private final Rack rack;
  private final Hands hands;
  private final Mistakes mistakes;
  private final Habits habits;
  private final Random chance;
  private final Consumer<String> warn;
  private final Set<String> spoiled = new HashSet<>();
  private boolean deserted;
  private String lastWork = "";
  private int tries;
  private String hopelessWork = "";
  private String wrenchlessWork = "";

  /**
   * How a person goes about it.
   *
   * @param idleAfter after how long without a message the person goes home
   * @param verdictWithin how long a verdict takes at most before the person wonders
   * @param anyOrder whether one of several fasteners is picked by chance, not the first listed
   * @param gatesFirst whether what is to be confirmed or measured is waited for, though something
   *     could be tightened meanwhile
   */
  public record Habits(
      Duration idleAfter, Duration verdictWithin, boolean anyOrder, boolean gatesFirst) {
    public Habits {
      Objects.requireNonNull(idleAfter, "idleAfter");
      Objects.requireNonNull(verdictWithin, "verdictWithin");
    }
  }

  /** A person at a bench; everything that scatters follows from {@code seed}. */
  public Operator(
      Bench bench,
      Rack rack,
      Parts parts,
      ShopClock clock,
      Truth truth,
      Mistakes mistakes,
      Habits habits,
      long seed,
      Consumer<String> warn) {
    this.bench = bench;
    this.rack = rack;
    this.hands = new Hands(parts, clock, bench, truth, Chance.of(seed, "hands"));
    this.mistakes = mistakes;
    this.habits = habits;
    this.chance = Chance.of(seed, "operator");
    this.warn = warn;
  }

  /** Works until the station is complete or idle, or nothing was heard for too long. */
  public Outcome work() throws IOException {
    boolean worked = false;
    while (true) {
      boolean mayEnd = worked;
      Optional<ExpectMessage> heard =
          bench.awaitExpect(e -> (mayEnd && e.isOver()) || isDoable(e), habits.idleAfter());
      if (heard.isEmpty()) {
        warn.accept(whyUnfinished());
        return Outcome.UNFINISHED;
      }
      if (heard.get().isOver()) {
        return Outcome.FINISHED;
      }
      count(heard.get());
      visit(pick(heard.get()));
      if (deserted) {
        warn.accept(whyUnfinished());
        return Outcome.UNFINISHED;
      }
      giveUpWhatIsHopeless(heard.get());
      worked = true;
    }
  }

  private boolean isDoable(ExpectMessage heard) {
    if (habits.gatesFirst() && heard.others()) {
      return false;
    }
    if (!heard.isTighten() || Task.work(heard).equals(hopelessWork)) {
      return false;
    }
    if (tasks(heard).isEmpty()) {
      if (!Task.work(heard).equals(wrenchlessWork)) {
        wrenchlessWork = Task.work(heard);
        warn.accept(
            "no wrench here may do %s: give one with --wrench that is allowed there and whose range holds the band"
                .formatted(heard.expect().get(0).fastener()));
      }
      return false;
    }
    return true;
  }

  private List<Task> tasks(ExpectMessage heard) {
    return heard.expect().stream()
        .flatMap(due -> rack.fit(due).stream().map(tool -> new Task(heard, due, tool)))
        .toList();
  }

  private Task pick(ExpectMessage heard) {
    List<Task> tasks = tasks(heard);
    return tasks.get(habits.anyOrder() ? chance.nextInt(tasks.size()) : 0);
  }

  /** Counts tries at the same work. */
  private void count(ExpectMessage heard) {
    String work = Task.work(heard);
    tries = work.equals(lastWork) ? tries + 1 : 1;
    lastWork = work;
  }

  /** Stops what never helps, so that no reading is repeated for ever. */
  private void giveUpWhatIsHopeless(ExpectMessage heard) {
    if (tries >= MOST_TRIES) {
      hopelessWork = lastWork;
      warn.accept(
          "tried %s %d times and it is still expected; waiting until something else is"
              .formatted(heard.expect().get(0).fastener(), tries));
    }
  }

  private void visit(Task task) throws IOException {
    String fastener = task.due().fastener();
    if (spoiled.contains(spoiledName(task, fastener)) && hands.isHeld(task, fastener)) {
      undo(task, fastener, Optional.empty());
      return;
    }
    Optional<Mistake> mistake = mistakes.next(fastener);
    Optional<Kind> kind = mistake.map(Mistake::kind);
    String place = fastener;
    if (kind.equals(Optional.of(Kind.SKIP))) {
      Optional<String> neighbour = mistake.get().neighbour().or(task::neighbour);
      if (neighbour.isEmpty()) {
        warn.accept(
            "cannot skip %s: its neighbour is unknown; name it with --mistake %s=skip:NEIGHBOUR"
                .formatted(fastener, fastener));
        mistake = Optional.empty();
      }
      place = neighbour.orElse(fastener);
    }
    hearOut(task, place, hands.tighten(task, place, mistake));
    if (deserted) {
      return;
    }
    if (kind.equals(Optional.of(Kind.DOUBLE))) {
      hearOut(task, place, hands.tighten(task, place, mistake));
    } else if (kind.equals(Optional.of(Kind.LOOSEN))) {
      undo(task, place, mistake);
    }
  }

  private void undo(Task task, String fastener, Optional<Mistake> mistake) throws IOException {
    Reading reading = hands.loosen(task, fastener, mistake);
    hearOut(task, fastener, reading);
    spoiled.remove(spoiledName(task, fastener));
  }

  /** Waits for the verdict, and, where it changes what is expected, for that. */
  private void hearOut(Task task, String place, Reading reading) {
    Optional<VerdictMessage> verdict = bench.awaitVerdict(reading, habits.verdictWithin());
    if (verdict.isEmpty() && !bench.hasOtherWork()) {
      warn.accept(
          "no verdict on %s yet; a bridge that has this number already takes it as a repeat (start with another event=N)"
              .formatted(named(reading)));
      verdict = bench.awaitVerdict(reading, habits.idleAfter());
      deserted = verdict.isEmpty() && !bench.hasOtherWork();
    }
    if (verdict.isEmpty()) {
      return;
    }
    if (verdict.get().spoilsFastener()) {
      spoiled.add(spoiledName(task, place));
    }
    if (verdict.get().changesExpect() && !verdict.get().isLoosened()) {
      // Undoing alone is no progress: a joint that never fits would be turned to and fro for ever.
      tries = 0;
    }
    // A fastener that was due before it was undone is simply due still: nothing need change.
    if (verdict.get().changesExpect() && !(verdict.get().isLoosened() && bench.wasDue(place))) {
      bench.awaitOtherWork(habits.verdictWithin());
    }
  }

  private static String spoiledName(Task task, String fastener) {
    return task.heard().unit().or(task.heard()::job).orElse("") + " " + fastener;
  }

  private static String named(Reading reading) {
    return reading
        .event()
        .map(n -> "event " + n + " of " + reading.wrench())
        .orElse("the last event of " + reading.wrench());
  }

  private String whyUnfinished() {
    String silence = "nothing was heard for " + habits.idleAfter().toSeconds() + " s";
    Optional<ExpectMessage> last = bench.expect();
    if (last.isEmpty()) {
      return silence
          + ": no expect message came at all. Is the bridge running, and its station's name right?";
    }
    return silence
        + ", and the station's state is '%s' with %d done: a person's command may be due there"
            .formatted(last.get().state(), last.get().done());
  }
}
