package witnessmark.pipeline;

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
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Verdict;

/**
 * What a job's entries say about each fastener pass and gate, read without the program's own folds:
 * the newest thing said about each decides.
 */
final class Standing {
  private final Set<String> good = new HashSet<>();
  private final Set<String> open = new HashSet<>();
  private final Set<Long> questions = new HashSet<>();
  private final Map<String, List<String>> passes = new HashMap<>();

  private Standing() {}

  static Standing of(List<Entry> log, String job) {
    Standing standing = new Standing();
    Chronicle.of(log).forEach(fact -> standing.read(fact, job));
    return standing;
  }

  boolean complete(Plan plan) {
    if (!open.isEmpty() || !questions.isEmpty()) {
      return false;
    }
    for (Step step : plan.procedure().steps()) {
      if (step instanceof AttestStep && !good.contains(step.id())) {
        return false;
      }
      if (step instanceof TightenStep t) {
        for (int i = 0; i < t.positions().size(); i++) {
          for (var pass : t.passes()) {
            if (!good.contains(t.fastener(i) + ":" + pass.name())) {
              return false;
            }
          }
        }
      }
    }
    return true;
  }

  private void read(Chronicle.Fact fact, String job) {
    Entry entry = fact.entry();
    if (entry instanceof Entry.TorqueTaken t && t.job().filter(job::equals).isPresent()) {
      judged(fact, fact.judged().orElseThrow());
    } else if (entry instanceof Entry.Attested a) {
      good.add(a.step());
    } else if (entry instanceof Entry.Disposed d) {
      boolean was = open.remove(d.fastener());
      if (d.disposition() == Disposition.USE_AS_IS) {
        good.addAll(was ? passes.get(d.fastener()) : List.of());
      } else {
        forget(d.fastener());
      }
      d.undoes().forEach(this::undo);
    }
  }

  private void judged(Chronicle.Fact fact, Judged j) {
    if (j.effect() == Effect.ASKS) {
      if (!fact.settled()) {
        questions.add(fact.n());
      }
      return;
    }
    if (j.fastener().isEmpty()) {
      return;
    }
    String fastener = j.fastener().get();
    String pass = fastener + ":" + j.pass().orElseThrow();
    boolean bad =
        j.verdict().isPresent()
            && j.verdict().get() != Verdict.IN_BAND
            && j.effect() != Effect.NONE;
    if (j.effect() == Effect.NONCONFORMING) {
      if (j.verdict().isEmpty()) {
        forget(fastener);
        j.undoes().forEach(this::undo);
      }
      open.add(fastener);
      passes.put(fastener, upTo(fastener, j.pass().get()));
    } else if (j.effect() == Effect.LOOSENED) {
      forget(fastener);
      j.undoes().forEach(this::undo);
    } else if (bad) {
      forgetFrom(fastener, j.pass().get());
    } else if (j.effect() == Effect.CREDITED) {
      good.add(pass);
    }
  }

  private List<String> upTo(String fastener, String pass) {
    return pass.equals("snug")
        ? List.of(fastener + ":snug")
        : List.of(fastener + ":snug", fastener + ":final");
  }

  private void forgetFrom(String fastener, String pass) {
    good.remove(fastener + ":final");
    if (pass.equals("snug")) {
      good.remove(fastener + ":snug");
    }
  }

  private void forget(String fastener) {
    good.removeIf(g -> g.startsWith(fastener + ":"));
  }

  private void undo(String stage) {
    if (!stage.contains(":")) {
      good.remove(stage);
      return;
    }
    String step = stage.substring(0, stage.indexOf(':'));
    String pass = stage.substring(stage.indexOf(':') + 1);
    good.removeIf(
        g ->
            g.startsWith(step + "/")
                && (g.endsWith(":" + pass) || (pass.equals("snug") && g.endsWith(":final"))));
  }
}
