package witnessmark.scan;

import java.util.Optional;
import java.util.function.LongFunction;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.Answering;
import witnessmark.job.JobState;
import witnessmark.job.Shop;

/** A position of the job at the station: the answer that was announced, else the next reading's. */
record PositionCode(Shop shop, Code code, JobState job, LongFunction<Optional<Entry>> log) {
  Meant read() {
    Optional<Answering> announced =
        job.answering().filter(a -> a.operator().equals(code.operator()));
    return announced.isPresent()
        ? new Answer(shop, code, job, log).settle(announced.get(), Optional.of(code.text()))
        : named();
  }

  private Meant named() {
    return Meant.of(
            Meaning.FASTENER,
            "The next reading at " + code.station() + " is for " + code.text() + ".")
        .naming(code.text());
  }
}
