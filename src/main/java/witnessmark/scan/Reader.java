package witnessmark.scan;

import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import witnessmark.desk.Declined;
import witnessmark.desk.ResumeJob;
import witnessmark.desk.ScannerCommands;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.JobState;
import witnessmark.job.Released;
import witnessmark.job.Shop;

/**
 * Tells what a code means at its station. Where it could name several things, the first in the
 * order of {@link #meant} counts.
 */
public final class Reader {
  private final Shop shop;
  private final Code code;
  private final LongFunction<Optional<Entry>> log;
  private final Optional<JobState> job;

  private Reader(Shop shop, Code code, LongFunction<Optional<Entry>> log) {
    this.shop = shop;
    this.code = code;
    this.log = log;
    this.job = shop.active(code.station());
  }

  /**
   * What the code means.
   *
   * @param log the entries on record, by number
   */
  public static Meant read(Shop shop, Code code, LongFunction<Optional<Entry>> log) {
    Reader reader = new Reader(shop, code, log);
    Meant meant;
    try {
      meant = code.readable() ? reader.meant() : reader.nothing();
    } catch (Declined no) {
      meant = Meant.of(Meaning.DECLINED, no.sentence());
    }
    return meant.job().isPresent() ? meant : meant.on(reader.job.map(JobState::job));
  }

  private Meant meant() {
    String text = code.text();
    if (text.startsWith(ScannerCommands.PREFIX)) {
      return CommandCode.read(shop, code, job, log);
    }
    if (shop.operators().containsKey(text)) {
      return operator();
    }
    if (job.filter(j -> j.plan().fastener(text).isPresent()).isPresent()) {
      return new PositionCode(shop, code, job.get(), log).read();
    }
    Optional<Meant> step = job.flatMap(j -> StepCode.read(shop, code, j));
    if (step.isPresent()) {
      return step.get();
    }
    if (shop.jobs().containsKey(text)) {
      return resumed(shop, code, text);
    }
    Optional<Released> procedure = shop.newest(text);
    if (procedure.isPresent()) {
      return chosen(procedure.get());
    }
    return UnitCode.read(shop, code)
        .orElseGet(() -> text.matches("J-[0-9]+") ? resumed(shop, code, text) : nothing());
  }

  private Meant operator() {
    String badge = code.text();
    return Meant.of(
        Meaning.OPERATOR,
        badge + " works at " + code.station() + " from now on.",
        List.of(new Entry.OperatorAtStation(code.at(), code.station(), badge)));
  }

  private Meant chosen(Released procedure) {
    return Meant.of(
            Meaning.PROCEDURE,
            "The next unit scanned at "
                + code.station()
                + " is worked by "
                + procedure.procedure()
                + " revision "
                + procedure.revision()
                + ". Scan the unit.")
        .by(procedure.procedure());
  }

  static Meant resumed(Shop shop, Code code, String job) {
    Acted acted =
        Acted.by(new ResumeJob(job, Optional.of(code.station()), code.by(shop)), shop, code.at());
    String text =
        "Resumed " + job + " on unit " + shop.jobs().get(job).unit() + ". " + acted.next(job);
    return Meant.of(Meaning.RESUME, text, acted.entries()).on(Optional.of(job));
  }

  private Meant nothing() {
    return Meant.of(
        Meaning.NOTHING,
        "This code means nothing at "
            + code.station()
            + ": scan a badge, a unit, a job, a procedure, or a position or step of the job here.");
  }
}
