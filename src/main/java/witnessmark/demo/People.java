package witnessmark.demo;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import witnessmark.desk.Assign;
import witnessmark.desk.Attest;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Command;
import witnessmark.desk.Dispose;
import witnessmark.desk.Measure;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.ledger.Reading;
import witnessmark.pipeline.Journal;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Stage;
import witnessmark.torque.Digits;

/** The people of the demo: they confirm, measure, decide and answer when the job waits for them. */
final class People {
  private final Journal journal;
  private final Reading reading;
  private final String job;
  private final Duration thinking;
  private Optional<Command> intended = Optional.empty();
  private long since;
  private boolean closed;

  /**
   * @param thinking how long they take before they act
   */
  People(Journal journal, Reading reading, String job, Duration thinking) {
    this.journal = journal;
    this.reading = reading;
    this.job = job;
    this.thinking = thinking;
  }

  boolean closed() {
    return closed;
  }

  /** Does what the job waits for, after having thought. */
  void act(Shop shop) {
    if (!shop.jobs().containsKey(job)) {
      return;
    }
    Optional<Command> wanted = wanted(shop.jobs().get(job));
    if (!wanted.equals(intended)) {
      intended = wanted;
      since = System.nanoTime();
    }
    if (wanted.isPresent() && System.nanoTime() - since >= thinking.toNanos()) {
      journal.carryOut(wanted.get(), Moments.now());
      intended = Optional.empty();
      closed = wanted.get() instanceof CloseJob;
    }
  }

  private Optional<Command> wanted(JobState state) {
    Due due = Due.of(state);
    if (!due.nonconforming().isEmpty()) {
      int fastener = due.nonconforming().get(0);
      boolean over = state.condition(fastener).flaw().orElseThrow().overtightened();
      String why = (over ? "overtightened" : "may be used only once") + ": new bolt fitted";
      return Optional.of(
          new Dispose(job, state.plan().name(fastener), Disposition.REPLACE, Scene.QUALITY, why));
    }
    if (!due.questions().isEmpty()) {
      return Optional.of(answer(due.questions().get(0)));
    }
    if (due.state() == Due.State.COMPLETE) {
      return Optional.of(new CloseJob(job, Optional.of(Scene.TECHNICIAN)));
    }
    return due.stages().stream().flatMap(s -> gate(s).stream()).findFirst();
  }

  private Command answer(long n) {
    Entry.TorqueTaken asks =
        (Entry.TorqueTaken) EntryJson.read(reading.entry(n).orElseThrow().bytes());
    return new Assign(
        n, asks, job, Optional.of(Scene.LOOSENED), Scene.TECHNICIAN, "I undid that one");
  }

  private Optional<Command> gate(Stage stage) {
    if (stage.step() instanceof AttestStep a) {
      return Optional.of(new Attest(job, a.id(), Scene.TECHNICIAN));
    }
    if (stage.step() instanceof MeasureStep m) {
      List<Digits> values = m.labels().stream().map(l -> new Digits("3.9")).toList();
      return Optional.of(new Measure(job, m.id(), values, Scene.TECHNICIAN));
    }
    return Optional.empty();
  }
}
