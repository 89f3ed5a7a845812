package wrenchsim.shop;

import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import wrenchsim.truth.Happening;
import wrenchsim.truth.Truth;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Reading;

/** A person at work over a wire: waits for the bridge, acts, waits for its verdict. */
public final class Operator {
  private final Bench bench;
  private final Person person;
  private final Wire wire;
  private final Truth truth;
  private final Patience patience;
  private final Consumer<String> warn;
  private boolean deserted;

  /** A person at a bench with a wire to the bridge. */
  public Operator(
      Bench bench,
      Person person,
      Wire wire,
      Truth truth,
      Patience patience,
      Consumer<String> warn) {
    this.bench = Objects.requireNonNull(bench, "bench");
    this.person = Objects.requireNonNull(person, "person");
    this.wire = Objects.requireNonNull(wire, "wire");
    this.truth = Objects.requireNonNull(truth, "truth");
    this.patience = Objects.requireNonNull(patience, "patience");
    this.warn = Objects.requireNonNull(warn, "warn");
  }

  /** Works until the station is complete or idle, or nothing was heard for too long. */
  public Outcome work() throws IOException {
    boolean worked = false;
    while (true) {
      boolean mayEnd = worked;
      Optional<ExpectMessage> heard =
          bench.awaitExpect(e -> (mayEnd && e.isOver()) || person.mayAct(e), patience.idleAfter());
      bench.assigned().forEach(person::hear);
      if (heard.isEmpty()) {
        warn.accept(whyUnfinished());
        return Outcome.UNFINISHED;
      }
      if (!person.mayAct(heard.get())) {
        return Outcome.FINISHED;
      }
      carryThrough(person.act(heard.get()), heard.get());
      if (deserted) {
        warn.accept(whyUnfinished());
        return Outcome.UNFINISHED;
      }
      worked = true;
    }
  }

  private void carryThrough(Deed deed, ExpectMessage before) throws IOException {
    for (Happening happening : deed.truth()) {
      truth.tell(happening);
    }
    bench.aboutToSend(deed.awaited());
    for (Message message : deed.messages()) {
      wire.send(message);
    }
    long credited = 0;
    for (Reading reading : deed.awaited()) {
      Optional<VerdictMessage> verdict = deserted ? Optional.empty() : hearOut(reading);
      credited += verdict.filter(VerdictMessage::isCredited).isPresent() ? 1 : 0;
    }
    if (credited > 1) {
      // The first change that a burst brings is not the last.
      long done = before.done() + credited;
      bench.awaitExpect(
          e -> e.done() >= done || !e.job().equals(before.job()), patience.verdictWithin());
    }
    for (Answer answer : person.answers()) {
      warn.accept(
          "entry %d asks which fastener it was: it was %s; tell the bridge so"
              .formatted(answer.entry(), answer.fastener()));
    }
  }

  /** Waits for the verdict, and, where it changes what is expected, for that. */
  private Optional<VerdictMessage> hearOut(Reading reading) {
    Optional<VerdictMessage> verdict = bench.awaitVerdict(reading, patience.verdictWithin());
    if (verdict.isEmpty() && !bench.hasOtherWork()) {
      warn.accept(
          "no verdict on %s yet; a bridge that has this number already takes it as a repeat (start with another event=N)"
              .formatted(named(reading)));
      verdict = bench.awaitVerdict(reading, patience.idleAfter());
      deserted = verdict.isEmpty() && !bench.hasOtherWork();
    }
    if (verdict.isEmpty()) {
      return verdict;
    }
    Optional<String> place = person.hear(verdict.get()).flatMap(h -> h.work().fastener());
    // A fastener that was due before it was undone is simply due still: nothing need change.
    boolean dueStill = verdict.get().isLoosened() && place.filter(bench::wasDue).isPresent();
    if (verdict.get().changesExpect() && !dueStill) {
      bench.awaitOtherWork(patience.verdictWithin());
    }
    return verdict;
  }

  private static String named(Reading reading) {
    return reading
        .event()
        .map(n -> "event " + n + " of " + reading.wrench())
        .orElse("the last event of " + reading.wrench());
  }

  private String whyUnfinished() {
    String silence = "nothing was heard for " + patience.idleAfter().toSeconds() + " s";
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
