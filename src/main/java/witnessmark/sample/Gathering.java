package witnessmark.sample;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Torque;

/**
 * Takes in what is on record and tells which readings are values of the process asked for.
 *
 * <p>A value is the last reading of a fastener in a job that was credited on the pass and stands. A
 * reading counts by the newest decision about it, be it its own, of a person, or of reading the job
 * anew.
 */
public final class Gathering {
  /** Kinds of entries in the order in which they are to be handed over, each by number. */
  public static final List<String> KINDS =
      List.of(
          "procedure-released",
          "job-opened",
          "disposed",
          "assigned",
          "reread",
          "set-aside",
          "torque");

  /**
   * A later decision about a reading.
   *
   * @param judged empty where it was set aside
   * @param moment where it stands in the job, for one that came without a job
   */
  private record Later(
      long n,
      String job,
      Optional<Judged> judged,
      Optional<Instant> moment,
      Optional<String> operator) {}

  private final Question question;
  private final Map<Long, Procedure> released = new HashMap<>();
  private final Map<String, Entry.JobOpened> jobs = new HashMap<>();
  private final Map<Long, Later> later = new HashMap<>();
  private final Map<String, List<Fact>> facts = new HashMap<>();
  private final Map<Omission, Integer> beside = new EnumMap<>(Omission.class);

  public Gathering(Question question) {
    this.question = question;
  }

  /** Takes the next entry; kinds that change nothing here are let pass. */
  public void take(long n, Entry entry) {
    if (entry instanceof Entry.ProcedureReleased e) {
      released.put(n, ProcedureFile.parse(e.procedure() + " revision " + e.revision(), e.text()));
    } else if (entry instanceof Entry.JobOpened e) {
      jobs.put(e.job(), e);
    } else if (entry instanceof Entry.Disposed e) {
      disposed(n, e);
    } else if (entry instanceof Entry.Assigned e) {
      decided(
          e.assigns(), new Later(n, e.job(), Optional.of(e.judged()), e.moment(), e.operator()));
    } else if (entry instanceof Entry.Reread e) {
      decided(
          e.rereads(),
          new Later(n, e.job(), Optional.of(e.judged()), Optional.empty(), Optional.empty()));
    } else if (entry instanceof Entry.SetAside e) {
      decided(
          e.sets(), new Later(n, e.job(), Optional.empty(), Optional.empty(), Optional.empty()));
    } else if (entry instanceof Entry.TorqueTaken e) {
      pulled(pull(n, e));
    }
  }

  private void decided(long n, Later decision) {
    later.merge(n, decision, (a, b) -> a.n() > b.n() ? a : b);
  }

  private void disposed(long n, Entry.Disposed e) {
    boolean anew = e.disposition() == Disposition.REWORK || e.disposition() == Disposition.REPLACE;
    keep(
        e.job(),
        new Undone(
            n,
            e.at(),
            anew ? Optional.of(e.fastener()) : Optional.empty(),
            new HashSet<>(e.undoes())));
  }

  private Pull pull(long n, Entry.TorqueTaken e) {
    Optional<Later> changed = Optional.ofNullable(later.get(n));
    Judged judged = changed.flatMap(Later::judged).orElse(e.judged());
    return new Pull(
        n,
        changed.flatMap(Later::moment).orElse(e.place()),
        e.moment(),
        changed.map(Later::job).or(e::job),
        e.event().wrench(),
        changed.flatMap(Later::operator).or(e.event()::operator).or(e::operator),
        judged.atFastener().map(Torque::parse).orElse(e.event().torque()),
        judged,
        changed.isPresent() && changed.get().judged().isEmpty());
  }

  private void pulled(Pull pull) {
    if (!pull.placed()) {
      boolean asked =
          question.fastener().isEmpty()
              && question.group().isEmpty()
              && question.asks(pull.wrench(), pull.operator())
              && question.asks(pull.moment());
      if (asked) {
        beside.merge(pull.setAside() ? Omission.SET_ASIDE : Omission.NOWHERE, 1, Integer::sum);
      }
      return;
    }
    if (question.asks(pull.fastener())) {
      keep(pull.job().get(), pull);
    }
    if (!pull.judged().undoes().isEmpty()) {
      Set<String> stages = new HashSet<>(pull.judged().undoes());
      keep(pull.job().get(), new Undone(pull.n(), pull.place(), Optional.empty(), stages));
    }
  }

  private void keep(String job, Fact fact) {
    Entry.JobOpened opened = jobs.get(job);
    boolean asked =
        opened != null
            && question.procedure().map(opened.procedure()::equals).orElse(true)
            && question.revision().map(opened.revision()::equals).orElse(true);
    if (asked) {
      facts.computeIfAbsent(job, j -> new ArrayList<>()).add(fact);
    }
  }

  /** What was found; nothing more may be handed over after that. */
  public Gathered result() {
    Strata strata = new Strata(question.text());
    facts.forEach(
        (job, happened) -> {
          Entry.JobOpened opened = jobs.get(job);
          for (Course.Fate fate : Course.of(happened)) {
            Pull pull = fate.pull();
            if (!question.asks(pull.moment()) || !question.asks(pull.wrench(), pull.operator())) {
              continue;
            }
            if (!pull.judged().pass().equals(passOf(opened, pull.step()))) {
              beside.merge(
                  pull.loosens() ? Omission.LOOSENED : Omission.ANOTHER_PASS, 1, Integer::sum);
            } else {
              strata.add(opened, fate);
            }
          }
        });
    return new Gathered(strata.studies(), beside);
  }

  /** The pass asked for, or the last one of the step that tightens. */
  private Optional<String> passOf(Entry.JobOpened opened, String step) {
    if (question.pass().isPresent()) {
      return question.pass();
    }
    TightenStep tighten = (TightenStep) released.get(opened.released()).step(step).orElseThrow();
    return tighten.passes().stream().filter(p -> !p.check()).reduce((a, b) -> b).map(Pass::name);
  }
}
