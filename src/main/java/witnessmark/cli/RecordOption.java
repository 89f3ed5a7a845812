package witnessmark.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.SortedMap;
import picocli.CommandLine.Option;
import witnessmark.cli.answer.FoundWarning;
import witnessmark.cli.answer.Json;
import witnessmark.ledger.Reading;
import witnessmark.record.Gather;
import witnessmark.record.UnitRecord;
import witnessmark.report.RecordJson;
import witnessmark.report.RecordText;

/** The {@code --record} option: a unit's whole record instead of its entries. */
final class RecordOption {
  @Option(
      names = "--record",
      description =
          "Print the unit's whole record, job by job: what was asked and measured, every try, "
              + "nonconformities, confirmations, wrenches, people, and what is missing.")
  private boolean wanted;

  boolean wanted() {
    return wanted;
  }

  /**
   * Prints the record.
   *
   * @return the exit status
   */
  int print(
      PrintWriter out,
      PrintWriter err,
      DataOption data,
      Optional<String> unit,
      Optional<String> job,
      boolean json) {
    Optional<UnitRecord> found = data.reading(r -> r.atOneMoment(() -> record(r, unit, job)));
    if (found.isEmpty()) {
      err.println("No job on record matches.");
      return Exit.NO;
    }
    UnitRecord record = found.get();
    if (json) {
      Json.write(out, RecordJson.of(record));
    } else {
      RecordText.of(record).forEach(out::println);
    }
    out.flush();
    FoundWarning.print(err, record);
    return Exit.YES;
  }

  private static Optional<UnitRecord> record(
      Reading reading, Optional<String> unit, Optional<String> job) {
    SortedMap<Long, byte[]> bytes = Gather.of(reading, unit, job);
    String origin = reading.checkpoint().flatMap(note -> note.lines().findFirst()).orElse("");
    return bytes.isEmpty() ? Optional.empty() : Optional.of(UnitRecord.ofBytes(bytes, origin));
  }
}
