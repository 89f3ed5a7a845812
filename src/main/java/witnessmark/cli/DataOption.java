package witnessmark.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import picocli.CommandLine.Option;
import witnessmark.desk.Command;
import witnessmark.entry.Moments;
import witnessmark.job.Shop;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Journal;
import witnessmark.pipeline.Pen;
import witnessmark.pipeline.Replay;

/** The {@code --data} option, and what commands do with the log that it names. */
final class DataOption {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      defaultValue = "${env:WITNESSMARK_DATA:-witnessmark-data}",
      description = "The data directory (default: $WITNESSMARK_DATA, else ./witnessmark-data).")
  private Path directory;

  LedgerFiles files() {
    if (directory.toString().isBlank()) {
      throw new Refusal(
          Exit.USAGE, "--data is empty; name the data directory, e.g. --data witnessmark-data");
    }
    return new LedgerFiles(directory);
  }

  /** Carries out a command and returns the number of its first entry. */
  long carryOut(Command command) {
    return appending(journal -> journal.carryOut(command, Moments.now()));
  }

  /** Carries out a command, signed where it must be, and returns the number of its first entry. */
  long carryOut(Command command, SignOption sign) {
    Optional<Pen> pen = sign.pen();
    return appending(journal -> journal.carryOut(command, Moments.now(), pen));
  }

  long appending(ToLongFunction<Journal> work) {
    try (SqliteLedger ledger = SqliteLedger.open(files())) {
      return work.applyAsLong(new Journal(ledger));
    }
  }

  /** Looks at the log without changing it. */
  <T> T reading(Function<Reading, T> look) {
    try (Reading reading = SqliteReading.briefly(files())) {
      return look.apply(reading);
    }
  }

  /** The shop as it stands. */
  Shop shop() {
    return reading(r -> Replay.of(r.live()));
  }
}
