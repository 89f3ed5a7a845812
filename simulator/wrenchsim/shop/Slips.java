package wrenchsim.shop;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.truth.Happening.Act;
import wrenchsim.wire.Expected;

/** What a mistake makes of a task: another place, another band, another wrench. */
final class Slips {
  private static final Pattern NUMBERED = Pattern.compile("(.*/)([0-9]{1,6})");

  private final Rack rack;
  private final Notes notes;
  private final Random chance;
  private final Consumer<String> warn;

  Slips(Rack rack, Notes notes, Random chance, Consumer<String> warn) {
    this.rack = rack;
    this.notes = notes;
    this.chance = chance;
    this.warn = warn;
  }

  /** The turn that follows from a task; it is done right where the mistake cannot be made there. */
  Plan plan(Task task, Optional<Mistake> mistake) {
    Plan right = Plan.tighten(task, task.due().fastener(), Optional.empty());
    if (mistake.isEmpty()) {
      return right;
    }
    Optional<Plan> wrong = wrong(task, mistake.get());
    if (wrong.isEmpty()) {
      warn.accept(
          "%s is done right, without the mistake '%s': %s"
              .formatted(
                  task.due().fastener(), mistake.get().kind().word(), why(mistake.get().kind())));
    }
    return wrong.orElse(right);
  }

  private Optional<Plan> wrong(Task task, Mistake mistake) {
    if (mistake.kind() == Kind.SKIP) {
      return neighbour(task, mistake).map(place -> Plan.tighten(task, place, Optional.of(mistake)));
    }
    if (mistake.kind() == Kind.WRONG) {
      return other(task, mistake);
    }
    if (mistake.kind() == Kind.WRONGTOOL) {
      return one(rack.misfits(task.due()))
          .map(tool -> new Task(task.heard(), task.due(), tool))
          .map(t -> Plan.tighten(t, t.due().fastener(), Optional.of(mistake)));
    }
    return Optional.of(Plan.tighten(task, task.due().fastener(), Optional.of(mistake)));
  }

  /**
   * The fastener of the same group that is taken for the due one: the next one listed; or as the
   * sheet has them, where it is known as a whole; or the next number.
   */
  private Optional<String> neighbour(Task task, Mistake mistake) {
    Expected due = task.due();
    List<Expected> listed = task.heard().expect();
    Optional<String> listedNext =
        listed.stream()
            .skip(listed.indexOf(due) + 1L)
            .filter(e -> e.group().equals(due.group()))
            .map(Expected::fastener)
            .findFirst();
    if (mistake.neighbour().isPresent() || listedNext.isPresent()) {
      return mistake.neighbour().or(() -> listedNext);
    }
    if (notes.isWhole(task.heard())) {
      return notes.neighbours(task.heard(), due).stream().findFirst();
    }
    Matcher numbered = NUMBERED.matcher(due.fastener());
    return numbered.matches()
        ? Optional.of(numbered.group(1) + (Integer.parseInt(numbered.group(2)) + 1))
        : Optional.empty();
  }

  /** A fastener of another group, with its own band and wrench, as if it were its turn. */
  private Optional<Plan> other(Task task, Mistake mistake) {
    if (mistake.neighbour().isPresent()) {
      String place = mistake.neighbour().get();
      Expected like = notes.find(task.heard(), place).orElse(task.due());
      return Optional.of(at(task, place, like, mistake));
    }
    List<Expected> possible =
        notes.elsewhere(task.heard()).stream().filter(e -> rack.fit(e).isPresent()).toList();
    return one(possible).map(like -> at(task, like.fastener(), like, mistake));
  }

  private Plan at(Task task, String place, Expected like, Mistake mistake) {
    Task taken = new Task(task.heard(), task.due(), rack.fit(like).orElse(task.tool()));
    return new Plan(Act.TIGHTEN, taken, place, like, Optional.of(mistake));
  }

  private <T> Optional<T> one(List<T> possible) {
    return possible.isEmpty()
        ? Optional.empty()
        : Optional.of(possible.get(chance.nextInt(possible.size())));
  }

  private static String why(Kind kind) {
    if (kind == Kind.WRONGTOOL) {
      return "every wrench here that reaches it may be used there";
    }
    String what = kind == Kind.SKIP ? "no neighbour" : "no fastener of another group";
    return "%s is known; name one with %s:FASTENER".formatted(what, kind.word());
  }
}
