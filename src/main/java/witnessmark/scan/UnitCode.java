package witnessmark.scan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.desk.Declined;
import witnessmark.desk.Few;
import witnessmark.desk.OpenJob;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.JobState;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.job.Status;

/** A unit's number: its job is resumed, or one is opened. */
final class UnitCode {
  private final Shop shop;
  private final Code code;
  private final Optional<String> chosen;

  private UnitCode(Shop shop, Code code) {
    this.shop = shop;
    this.code = code;
    this.chosen = Optional.ofNullable(shop.chosen().get(code.station()));
  }

  /** What the unit's number means; empty where it is of no unit that anything is known about. */
  static Optional<Meant> read(Shop shop, Code code) {
    return new UnitCode(shop, code).read();
  }

  private Optional<Meant> read() {
    List<JobState> unfinished = unfinished();
    List<Released> fitting = unfinished.isEmpty() ? fitting() : List.of();
    if (unfinished.isEmpty() && fitting.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(usingUp(unfinished, fitting));
  }

  /** The choice of a procedure holds for one unit, whether or not that is declined. */
  private Meant usingUp(List<JobState> unfinished, List<Released> fitting) {
    if (chosen.isEmpty()) {
      return unfinished.isEmpty() ? opened(fitting) : gone(unfinished);
    }
    Meant meant;
    try {
      meant = unfinished.isEmpty() ? opened(fitting) : gone(unfinished);
    } catch (Declined no) {
      String again = " " + chosen.get() + " is no longer chosen: scan it again if you want it.";
      meant = Meant.of(Meaning.DECLINED, no.sentence() + again);
    }
    return meant.by(chosen.get());
  }

  private List<JobState> unfinished() {
    return shop.jobs().values().stream()
        .filter(j -> j.unit().equals(code.text()))
        .filter(j -> chosen.isEmpty() || chosen.get().equals(j.plan().procedure().id()))
        .sorted(
            Comparator.comparingInt((JobState j) -> j.job().length()).thenComparing(JobState::job))
        .toList();
  }

  /** The newest revisions of procedures by which the unit may be worked. */
  private List<Released> fitting() {
    return shop.procedures().stream()
        .map(Released::procedure)
        .distinct()
        .map(p -> shop.newest(p).orElseThrow())
        .filter(r -> chosen.map(r.procedure()::equals).orElseGet(() -> matches(r)))
        .toList();
  }

  private boolean matches(Released released) {
    var procedure = released.parse();
    return procedure.unitPattern().isPresent() && procedure.accepts(code.text());
  }

  private Meant opened(List<Released> fitting) {
    if (fitting.size() > 1) {
      throw new Declined(
          "Unit "
              + code.text()
              + " fits "
              + Few.of(fitting.stream().map(Released::procedure).toList())
              + ". Scan the procedure first, then the unit.");
    }
    Released by = fitting.get(0);
    OpenJob command =
        new OpenJob(by.procedure(), Optional.empty(), code.text(), code.station(), code.by(shop));
    Acted acted = Acted.by(command, shop, code.at());
    String job = ((Entry.JobOpened) acted.entries().get(0)).job();
    String text =
        "Opened "
            + job
            + " on unit "
            + code.text()
            + " by "
            + by.procedure()
            + " revision "
            + by.revision()
            + ". "
            + acted.next(job);
    return Meant.of(Meaning.OPEN, text, acted.entries()).on(Optional.of(job));
  }

  /** Goes on with the unit's unfinished job. */
  private Meant gone(List<JobState> unfinished) {
    Optional<JobState> here = shop.active(code.station()).filter(unfinished::contains);
    if (here.isPresent()) {
      String job = here.get().job();
      return Meant.of(
          Meaning.STATUS,
          job + " on unit " + code.text() + " is open here already. " + Acted.next(shop, job));
    }
    List<JobState> suspended =
        unfinished.stream().filter(j -> j.status() == Status.SUSPENDED).toList();
    if (suspended.size() > 1) {
      throw new Declined(
          "Unit "
              + code.text()
              + " has several suspended jobs: "
              + suspended.stream()
                  .map(j -> j.job() + " by " + j.plan().procedure().id())
                  .collect(Collectors.joining(", "))
              + ". Scan the job's name or the procedure first.");
    }
    JobState one = suspended.isEmpty() ? unfinished.get(0) : suspended.get(0);
    return Reader.resumed(shop, code, one.job());
  }
}
