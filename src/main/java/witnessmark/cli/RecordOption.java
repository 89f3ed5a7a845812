package witnessmark.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.SortedMap;
import picocli.CommandLine.Option;
import witnessmark.cli.answer.FoundWarning;
import witnessmark.cli.answer.Json;
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
    SortedMap<Long, byte[]> bytes = data.reading(r -> r.atOneMoment(() -> Gather.of(r, unit, job)));
    if (bytes.isEmpty()) {
      err.println("No job on record matches.");
      return Exit.NO;
    }
    UnitRecord record = UnitRecord.ofBytes(bytes);
    if (json) {
      Json.write(out, RecordJson.of(record));
    } else {
      RecordText.of(record).forEach(out::println);
    }
    out.flush();
    FoundWarning.print(err, record);
    return Exit.YES;
  }
}
