package witnessmark.trial;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.job.Act;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.sight.Mistake;
import witnessmark.torque.Verdict;
import wrenchsim.truth.Happening;

/** Compares the record of one job with what was done. */
final class Account {
  private final Scene scene;
  private final Foretold foretold;
  private final JobState job;
  private final Tally tally;

  /** What each bolt really turned, in each pass, was credited to and still stands. */
  private final Map<String, String> credited = new HashMap<>();

  Account(Scene scene, Foretold foretold, JobState job, Tally tally) {
    this.scene = scene;
    this.foretold = foretold;
    this.job = job;
    this.tally = tally;
  }

  /**
   * @param done by the entry of its reading; what the job's history does not hold counts as it was
   *     first decided
   */
  void settle(Map<Long, Done> done) {
    Set<Long> here = new HashSet<>();
    for (Act act : History.all(job)) {
      undoes(act).forEach(stage -> credited.keySet().removeIf(c -> belongs(c, stage)));
      if (done.containsKey(act.n())) {
        here.add(act.n());
        count(act.n(), done.get(act.n()), act.judged().orElseThrow());
      }
    }
    done.forEach(
        (n, d) -> {
          if (!here.contains(n)) {
            count(n, d, d.first());
          }
        });
  }

  private static List<String> undoes(Act act) {
    return act.entry() instanceof Entry.Disposed d
        ? d.undoes()
        : act.judged().map(Judged::undoes).orElse(List.of());
  }

  /** Whether a credit, as {@code hub/3 final}, is one of a stage, as {@code hub:final}. */
  private static boolean belongs(String credit, String stage) {
    return (Happened.step(credit) + ":" + credit.substring(credit.indexOf(' ') + 1)).equals(stage);
  }

  private void count(long n, Done done, Judged judged) {
    boolean shownInside = judged.verdict().equals(Optional.of(Verdict.IN_BAND));
    Happened what = Happened.of(done, shownInside);
    Recorded how = Recorded.of(done, what, judged, twice(done, judged));
    tally.count(what, how);
    boolean good = what == Happened.GOOD || what == Happened.GOOD_LATE;
    if (good && how != Recorded.RIGHT && how != Recorded.EXCHANGED) {
      tally.falseAlarms++;
      example("false alarm", judged.effect().code(), judged);
    }
    if (how == Recorded.WRONG) {
      example("credited wrongly", what.words(), judged);
    }
    if (hidden(what, how)
        && !foretold.unseen(mistakes(what, n, judged), stage(done, what, judged))) {
      tally.unannounced++;
      example("not announced", what.words(), judged);
    }
  }

  private void example(String what, String how, Judged judged) {
    tally.example(scene.title() + ": " + what + ": " + how + ", " + judged.reason().code());
  }

  /** Keeps the account of credits; whether the bolt has one for that pass already. */
  private boolean twice(Done done, Judged judged) {
    if (done.happening().act() == Happening.Act.LOOSEN) {
      credited.keySet().removeIf(c -> c.startsWith(done.place() + " "));
    }
    String recorded = judged.fastener().orElse("");
    if (judged.effect() == Effect.LOOSENED || judged.effect() == Effect.NONCONFORMING) {
      credited.values().removeIf(recorded::equals);
    }
    return judged.effect() == Effect.CREDITED
        && credited.put(done.place() + " " + judged.pass().orElse(""), recorded) != null;
  }

  /** Whether the record shows nothing of what went wrong; a wrench's own error is no mistake. */
  private static boolean hidden(Happened what, Recorded how) {
    return how == Recorded.WRONG || (how == Recorded.UNSEEN && what == Happened.CROSSED);
  }

  /** What {@code procedure check} had to announce. */
  private List<Mistake> mistakes(Happened what, long n, Judged judged) {
    return switch (what) {
      case CROSSED -> List.of(Mistake.CROSS_THREADED);
      case WRONG_FASTENER -> List.of(Mistake.WRONG_PLACE, Mistake.WRONG_GROUP, Mistake.TOO_EARLY);
      case OVER -> List.of(Mistake.OVER);
      default ->
          begun(n, judged)
              ? List.of(Mistake.HIDDEN_SKIP, Mistake.DOUBLE_HIT, Mistake.AGAIN_AFTER_UNDER)
              : List.of(Mistake.HIDDEN_SKIP, Mistake.DOUBLE_HIT);
    };
  }

  /** Whether the fastener that got the credit stood below its band before. */
  private boolean begun(long n, Judged judged) {
    int fastener = job.plan().fastener(judged.fastener().orElseThrow()).orElseThrow();
    return History.before(job, n)
        .filter(before -> before.condition(fastener).reached().signum() > 0)
        .isPresent();
  }

  /** Threads are crossed in a first pass, whatever comes on top. */
  private String stage(Done done, Happened what, Judged judged) {
    int bolt = job.plan().fastener(done.place()).orElseThrow();
    String pass =
        what == Happened.CROSSED
            ? job.plan().stepOf(bolt).passes().get(0).name()
            : judged.pass().orElseThrow();
    return Happened.step(done.place()) + ":" + pass;
  }
}
