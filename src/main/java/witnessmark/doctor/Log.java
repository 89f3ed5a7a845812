package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.job.Shop;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.ledger.verify.Checkpoint;
import witnessmark.ledger.verify.NoteException;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;
import witnessmark.pipeline.Replay;

/** The log itself: whether it opens, whether its end is as it was signed, whether all of it is. */
final class Log {
  static final String AREA = "ledger";
  private static final int LAST = 100;

  private final LedgerFiles files;
  private final List<Finding> found = new ArrayList<>();
  private Optional<Shop> shop = Optional.empty();
  private Optional<Instant> last = Optional.empty();

  Log(LedgerFiles files) {
    this.files = files;
  }

  List<Finding> look() {
    try (Reading reading = SqliteReading.open(files)) {
      reading.atOneMoment(
          () -> {
            read(reading);
            return true;
          });
      shop = Optional.of(Replay.of(reading.live()));
    } catch (LedgerException e) {
      add(unopened(e));
      return found;
    } catch (RuntimeException e) {
      add(
          Finding.bad(
              AREA,
              "An entry cannot be understood: " + e.getMessage(),
              "Find which: witnessmark ledger verify --data " + files.directory()));
      return found;
    }
    end();
    return found;
  }

  private Finding unopened(LedgerException e) {
    String before = "It does not open: ";
    if (Disk.full(files.directory())) {
      return Finding.bad(
          AREA,
          before + e.getMessage(),
          "Make room on the disk first, then look again: witnessmark doctor --data "
              + files.directory());
    }
    if (!Files.isWritable(files.directory())) {
      return Finding.bad(
          AREA,
          before + e.getMessage(),
          "A log is opened by who may write to its directory: sudo -u "
              + Directory.owner(files.directory())
              + " witnessmark doctor --data "
              + files.directory());
    }
    return Finding.told(
        AREA,
        before,
        String.valueOf(e.getMessage()),
        "Name the right directory with --data. If it is this one, do not write to it; copy the whole"
            + " directory first: cp -a "
            + files.directory()
            + " COPY");
  }

  private void read(Reading reading) {
    long size = reading.size();
    List<Stored> newest = reading.from(Math.max(0, size - LAST), LAST);
    for (Stored stored : newest) {
      Entry entry = EntryJson.read(stored.bytes());
      last = Optional.of(entry.at());
    }
    add(Finding.good(AREA, size + " entries; the last " + newest.size() + " can be read."));
    checkpoint(reading, size);
  }

  private void checkpoint(Reading reading, long size) {
    if (!Files.isReadable(files.verifier())) {
      return; // the key's own check says so
    }
    try {
      Checkpoint signed =
          Checkpoint.open(reading.checkpoint().orElse(""), Files.readString(files.verifier()));
      if (signed.size() == size) {
        add(
            Finding.good(
                AREA, "The newest checkpoint is signed by ledger.pub's key, over all entries."));
      } else {
        add(
            Finding.bad(
                AREA,
                "The checkpoint signs " + signed.size() + " entries, but there are " + size + ".",
                verify()));
      }
    } catch (NoteException | IllegalArgumentException | IOException e) {
      add(
          Finding.bad(
              AREA,
              "The newest checkpoint is not one that ledger.pub's key has signed: "
                  + e.getMessage()
                  + ".",
              "If ledger.pub was exchanged, restore it from a backup. Else: witnessmark ledger verify --data "
                  + files.directory()
                  + " --key THE KEY YOU KEEP ELSEWHERE"));
    }
  }

  private String verify() {
    return "Find where: witnessmark ledger verify --data " + files.directory();
  }

  /** What the daemon itself checks before it appends: the root over everything, by the key. */
  private void end() {
    if (!Keys.pair(files)) {
      return; // the key's own check says so
    }
    try (SqliteLedger ledger = SqliteLedger.open(files)) {
      ledger.live();
      add(Finding.good(AREA, "Its end is as it was signed."));
    } catch (LedgerException e) {
      add(
          Finding.told(
              AREA, "Nothing can be appended: ", String.valueOf(e.getMessage()), verify()));
    }
  }

  /** Reads every entry and recomputes everything. */
  List<Finding> whole() {
    try (RawReader raw = RawReader.open(files.database())) {
      Report report = Verifier.verify(raw, Files.readString(files.verifier()));
      return List.of(
          report.verifies()
              ? Finding.good(AREA, "All " + report.size() + " entries verify.")
              : Finding.bad(
                  AREA, "It does not verify: " + report.findings().get(0) + ".", verify()));
    } catch (IOException | IllegalArgumentException e) {
      return List.of(Finding.bad(AREA, "It cannot be verified: " + e.getMessage() + ".", verify()));
    }
  }

  private void add(Finding finding) {
    found.add(finding);
  }

  /** The shop as it stands, where the log could be read. */
  Optional<Shop> shop() {
    return shop;
  }

  /** When the newest entry was taken. */
  Optional<Instant> last() {
    return last;
  }
}
