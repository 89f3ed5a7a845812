package witnessmark.scan;

import java.time.Duration;
import java.util.Optional;
import java.util.function.LongFunction;
import witnessmark.desk.Assign;
import witnessmark.desk.Declined;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.Answering;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/**
 * The answer to a question of the job at the station. It takes two scans in a row, the command and
 * then the position, because a position alone names the next reading.
 */
record Answer(Shop shop, Code code, JobState job, LongFunction<Optional<Entry>> log) {
  static final Duration PATIENCE = Duration.ofMinutes(2);

  /** Announces that the next position scanned is the answer to the oldest question. */
  Meant announce() {
    long question =
        job.questions().stream()
            .min(Long::compare)
            .orElseThrow(
                () ->
                    new Declined(
                        "No reading of " + job.job() + " asks for its fastener. " + next()));
    by();
    Entry.TorqueTaken taken = taken(question);
    int others = job.questions().size() - 1;
    String text =
        "Entry "
            + question
            + ", "
            + taken.event().torque()
            + " by "
            + taken.event().wrench()
            + ", was on which fastener? Scan its position within "
            + PATIENCE.toMinutes()
            + " minutes, or "
            + CommandCode.SET_ASIDE.code()
            + " if on none."
            + (others == 0 ? "" : " (" + others + " more ask after it.)");
    return Meant.of(Meaning.QUESTION, text).about(question);
  }

  /** Sets the reading aside that was announced to be answered next. */
  Meant setAside() {
    Answering announced =
        job.answering()
            .filter(a -> a.operator().equals(code.operator()))
            .orElseThrow(
                () ->
                    new Declined(
                        "Scan "
                            + CommandCode.ANSWER.code()
                            + " first, which tells the reading that it is about; then "
                            + CommandCode.SET_ASIDE.code()
                            + "."));
    return settle(announced, Optional.empty());
  }

  /** Puts the reading on the fastener, or on none; the announcement holds for one try. */
  Meant settle(Answering announced, Optional<String> fastener) {
    try {
      return settled(announced, fastener).about(announced.question());
    } catch (Declined no) {
      return Meant.of(Meaning.DECLINED, no.sentence()).about(announced.question());
    }
  }

  private Meant settled(Answering announced, Optional<String> fastener) {
    long question = announced.question();
    if (announced.stale() || code.at().isAfter(announced.since().plus(PATIENCE))) {
      throw new Declined(
          "Nothing was done: something came between "
              + CommandCode.ANSWER.code()
              + " and this, or more than "
              + PATIENCE.toMinutes()
              + " minutes. Scan "
              + CommandCode.ANSWER.code()
              + " again, or only this again.");
    }
    Assign command =
        new Assign(
            question,
            taken(question),
            job.job(),
            fastener,
            by(),
            "scanned at " + code.station() + " as the answer");
    Acted acted = Acted.by(command, shop, code.at());
    Meaning meaning = fastener.isPresent() ? Meaning.ANSWER : Meaning.SET_ASIDE;
    return Meant.of(meaning, told(acted, question), acted.entries());
  }

  private String told(Acted acted, long question) {
    Entry made = acted.entries().get(0);
    return made instanceof Entry.Assigned a
        ? "Entry " + question + " answered. " + a.judged().text()
        : "Entry " + question + " counts for no fastener. " + acted.next(job.job());
  }

  private String by() {
    return code.by(shop)
        .orElseThrow(
            () ->
                new Declined(
                    "Nobody is known at "
                        + code.station()
                        + " to answer: scan your badge, then "
                        + CommandCode.ANSWER.code()
                        + "."));
  }

  private Entry.TorqueTaken taken(long question) {
    return log.apply(question)
        .filter(Entry.TorqueTaken.class::isInstance)
        .map(Entry.TorqueTaken.class::cast)
        .orElseThrow(
            () ->
                new Declined(
                    "Entry "
                        + question
                        + " cannot be answered by a scan: answer it by the command assign "
                        + question
                        + "."));
  }

  private String next() {
    return Acted.next(shop, job.job());
  }
}
