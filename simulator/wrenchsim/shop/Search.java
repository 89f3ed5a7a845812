package wrenchsim.shop;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wrenchsim.truth.Happening.Act;
import wrenchsim.truth.Happening.Work;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;

/**
 * The search for a loose fastener, after a hit on what was believed to be fresh was taken for a
 * second one.
 */
final class Search {
  private final Rack rack;
  private final Notes notes;
  private final Hands hands;
  private Optional<Work> doubt = Optional.empty();
  private Optional<Expected> inVain = Optional.empty();
  private String vainWork = "";
  private final Set<String> redone = new HashSet<>();
  private Optional<String> redoneOn = Optional.empty();

  Search(Rack rack, Notes notes, Hands hands) {
    this.rack = rack;
    this.notes = notes;
    this.hands = hands;
  }

  /** Something about this hit is doubtful. */
  void begin(Work work) {
    doubt = Optional.of(work);
  }

  /**
   * Goes over the group by hand, once for each doubt: how to tighten the first fastener that should
   * be tight, or is due, and is loose.
   */
  Optional<Plan> find(ExpectMessage heard) {
    Optional<Work> work = doubt;
    doubt = Optional.empty();
    inVain = Optional.empty();
    if (work.isEmpty() || !heard.isTighten() || !heard.job().equals(work.get().job())) {
      return Optional.empty();
    }
    String due = work.get().expected().orElseThrow();
    String group = due.split("/", 2)[0];
    for (Expected each : notes.doneOrDue(heard, group, work.get().pass().orElseThrow())) {
      Optional<Task> task = rack.fit(each).map(tool -> new Task(heard, dueIn(heard, group), tool));
      if (task.isPresent() && hands.feelsSlack(task.get(), each)) {
        return Optional.of(
            new Plan(Act.TIGHTEN, task.get(), each.fastener(), each, Optional.empty()));
      }
    }
    inVain = Optional.of(dueIn(heard, group));
    return Optional.empty();
  }

  /**
   * What to undo and to do again, when this search and the one before found nothing loose and
   * nothing has changed: first the due fastener, and where that does not help the whole group; each
   * once in a job.
   */
  List<Expected> undo(ExpectMessage heard) {
    if (inVain.isEmpty()) {
      return List.of();
    }
    String work = Task.work(heard);
    boolean before = work.equals(vainWork);
    vainWork = work;
    if (!heard.job().equals(redoneOn)) {
      redone.clear();
      redoneOn = heard.job();
    }
    if (!before) {
      return List.of();
    }
    Expected due = inVain.get();
    if (redone.add(due.fastener())) {
      return List.of(due);
    }
    return redone.add(due.group()) ? notes.doneOrDue(heard, due.group(), due.pass()) : List.of();
  }

  private static Expected dueIn(ExpectMessage heard, String group) {
    return heard.expect().stream()
        .filter(e -> e.group().equals(group))
        .findFirst()
        .orElse(heard.expect().get(0));
  }
}
