package witnessmark.pipeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.job.Plan;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.Criticality;
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Direction;
import witnessmark.torque.Verdict;

/**
 * What a job's entries did to each fastener's material, read without the program's own folds, and
 * every entry that should not have been possible on it.
 */
final class Wearing {
  private final Plan plan;
  private final Set<String> pulled = new HashSet<>();
  private final Map<String, Long> spent = new HashMap<>();
  private final Set<String> unconfirmed = new HashSet<>();
  private final Map<String, Integer> failures = new HashMap<>();
  private final Map<String, Judged> worst = new HashMap<>();
  private long known;
  private final List<String> wrong = new ArrayList<>();

  private Wearing(Plan plan) {
    this.plan = plan;
  }

  /** The entries of the job that break a rule, each in a sentence. */
  static List<String> wrong(List<Entry> log, Plan plan) {
    Wearing wearing = new Wearing(plan);
    Chronicle.of(log).forEach(wearing::read);
    return wearing.wrong;
  }

  private void read(Chronicle.Fact fact) {
    long n = fact.n();
    Entry entry = fact.entry();
    if (entry instanceof Entry.TorqueTaken t) {
      known = fact.known();
      placed(n, fact.judged().orElseThrow(), t.event().direction());
    } else if (entry instanceof Entry.Attested a) {
      unconfirmed.removeIf(u -> u.endsWith(" " + a.step()));
    } else if (entry instanceof Entry.Disposed d) {
      disposed(n, d);
    } else if (entry instanceof Entry.JobClosed) {
      spent
          .keySet()
          .forEach(f -> wrong.add(n + " closes around " + f + ", which was to be replaced"));
      unconfirmed.forEach(u -> wrong.add(n + " closes without renewing " + u));
    }
  }

  private void placed(long n, Judged j, Direction direction) {
    if (j.fastener().isEmpty()) {
      return;
    }
    String f = j.fastener().get();
    if (direction == Direction.CCW) {
      loosened(f);
      return;
    }
    pulled.add(f);
    String pass = f + ":" + j.pass().orElseThrow();
    if (j.effect() == Effect.CREDITED) {
      failures.remove(pass);
      if (spent.containsKey(f)) {
        wrong.add(n + " credits " + f + ", which was to be replaced");
      }
      unconfirmed.stream()
          .filter(u -> u.startsWith(f + " "))
          .forEach(u -> wrong.add(n + " credits before renewing " + u));
    } else if (j.effect() == Effect.NONCONFORMING) {
      worst.put(f, j);
    } else if (j.effect() == Effect.AGAIN && j.verdict().get() != Verdict.IN_BAND) {
      int count = failures.merge(pass, 1, Integer::sum);
      if (step(f).care().rework().tries().orElse(Integer.MAX_VALUE) <= count) {
        wrong.add(n + " lets " + pass + " be tried after failure " + count);
      }
    }
  }

  private void disposed(long n, Entry.Disposed d) {
    String f = d.fastener();
    failures.keySet().removeIf(p -> p.startsWith(f + ":"));
    Judged reading = worst.remove(f);
    boolean damaged =
        reading != null
            && (reading.verdict().get() == Verdict.OVER_TORQUE
                || reading.verdict().get() == Verdict.ANGLE_HIGH);
    if (d.disposition() == Disposition.REPLACE) {
      loosened(f);
      spent.remove(f);
    } else if (d.disposition() == Disposition.REWORK) {
      if (step(f).care().rework().singleUse()
          || damaged && step(f).criticality() == Criticality.DANGER) {
        wrong.add(n + " reworks " + f);
      }
      loosened(f);
    } else if (d.disposition() == Disposition.USE_AS_IS && spent.getOrDefault(f, n) < n) {
      wrong.add(n + " accepts " + f + ", which was to be replaced");
    }
  }

  private void loosened(String f) {
    if (pulled.remove(f) && step(f).care().rework().singleUse()) {
      spent.put(f, known);
    }
    for (Step s : plan.procedure().steps()) {
      boolean waits =
          step(f).after().orElse(List.of()).stream().anyMatch(p -> p.step().equals(s.id()));
      if (waits && s instanceof AttestStep a && a.renew()) {
        unconfirmed.add(f + " " + a.id());
      }
    }
  }

  private TightenStep step(String fastener) {
    return plan.stepOf(plan.fastener(fastener).orElseThrow());
  }
}
