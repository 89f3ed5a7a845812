package witnessmark.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.decode.Scanned;
import witnessmark.decode.Torqued;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.CloseJob;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.desk.Tried;
import witnessmark.entry.Entry;
import witnessmark.entry.Moments;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.pipeline.Arrival;
import witnessmark.pipeline.Journal;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** A data directory with a log in it, and a configuration file beside it. */
final class Data implements AutoCloseable {
  private final LedgerFiles files;
  private final SqliteLedger ledger;
  private final Journal journal;
  private int number;
  private final int wrenches;
  private int unit;

  private Data(Path directory) {
    this(directory, Work.wrenches());
  }

  private Data(Path directory, int wrenches) {
    this.wrenches = wrenches;
    files = new LedgerFiles(directory);
    ledger = SqliteLedger.create(files);
    journal = new Journal(ledger);
    journal.note(new Entry.LogOpened(Moments.now(), ledger.origin()));
  }

  /** A log with nothing in it but that it began. */
  static LedgerFiles empty(Path directory) {
    try (Data data = new Data(directory)) {
      return data.files;
    }
  }

  /** A log with four wrenches and an open job. */
  static LedgerFiles withJob(Path directory, int fasteners) {
    try (Data data = new Data(directory)) {
      data.enrol(fasteners);
      data.open();
      return data.files;
    }
  }

  /** A log of many finished jobs, a scanned badge in each, and one open job. */
  static LedgerFiles withHistory(Path directory, int entries, int fasteners) {
    try (Data data = new Data(directory)) {
      data.enrol(fasteners);
      while (data.journal.shop().size() < entries) {
        String job = data.open();
        data.work(2 * fasteners);
        data.journal.carryOut(new CloseJob(job, Optional.empty()), Moments.now());
      }
      data.open();
      return data.files;
    }
  }

  /**
   * A log of many finished jobs with two wrenches, of which the first was found to show 4.5 per
   * cent too much in the end.
   */
  static LedgerFiles forTheDesk(Path directory, int entries, int fasteners) {
    try (Data data = new Data(directory, 2)) {
      data.enrol(fasteners);
      while (data.journal.shop().size() < entries - 1) {
        String job = data.open();
        data.work(2 * fasteners);
        data.journal.carryOut(new CloseJob(job, Optional.empty()), Moments.now());
      }
      data.calibrate();
      return data.files;
    }
  }

  private void calibrate() {
    Instant now = Moments.now();
    List<Tried> found = List.of(tried("10.45", "10"), tried("62.7", "60"), tried("104.5", "100"));
    List<Tried> left = List.of(tried("10", "10"), tried("60", "60"), tried("100", "100"));
    journal.carryOut(
        new CalibrateWrench(
            Work.wrench(0),
            "C-26-140",
            "calibration room",
            now.truncatedTo(ChronoUnit.DAYS),
            Optional.empty(),
            Optional.empty(),
            0,
            new Digits("1.0"),
            found,
            left,
            Optional.empty()),
        now);
  }

  private static Tried tried(String indicated, String reference) {
    return new Tried(
        Torque.parse(indicated + " N.m"), Collections.nCopies(5, Torque.parse(reference + " N.m")));
  }

  /** A configuration file that reads and tells one broker. */
  static Path config(Path directory, String bridge, String url) {
    try {
      Files.createDirectories(directory);
      return Files.writeString(
          directory.resolve(bridge + ".toml"),
          "[bridge]\nname = \""
              + bridge
              + "\"\n\n[[mqtt]]\nname = \"main\"\nurl = \""
              + url
              + "\"\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void enrol(int fasteners) {
    Instant now = Moments.now();
    journal.carryOut(new EnrolOperator("badge-07", "bench 1", Optional.empty()), now);
    for (int i = 0; i < Work.wrenches(); i++) {
      journal.carryOut(Work.enrolment(i, now), now);
    }
    String text = Work.procedure(fasteners);
    journal.carryOut(
        new Release(ProcedureFile.parse("benchmark", text), text, Optional.empty()), now);
  }

  private String open() {
    String name = String.format("ATR-26-%04d", unit++);
    journal.carryOut(
        new OpenJob(Work.PROCEDURE, Optional.empty(), name, Work.STATION, Optional.empty()),
        Moments.now());
    return journal.shop().active(Work.STATION).orElseThrow().job();
  }

  private void work(int passes) {
    List<Arrival> arrivals = new ArrayList<>();
    arrivals.add(arrival(new Scanned("badge-07", Optional.empty(), "{}")));
    for (int i = 0; i < passes; i++) {
      arrivals.add(fresh(i, number++, Work.wrench(i % wrenches)));
    }
    journal.take(List.of(arrivals));
  }

  /** The nth reading of a job done in order, from a wrench without a clock. */
  static Arrival fresh(int nth, int number) {
    return fresh(nth, number, Work.wrench(nth));
  }

  private static Arrival fresh(int nth, int number, String wrench) {
    TorqueEvent event =
        new TorqueEvent(
            wrench,
            OptionalLong.of(number),
            Optional.empty(),
            Torque.parse(Work.torque(nth) + " N.m"),
            Optional.of(Angle.of("41.2")),
            Direction.CW,
            Optional.empty(),
            Optional.empty());
    String raw = new String(Work.reading(number, event.wrench(), Work.torque(nth), ""));
    return arrival(new Torqued(event, raw));
  }

  private static Arrival arrival(witnessmark.decode.Decoded decoded) {
    return new Arrival(
        Optional.of(Work.STATION), "benchmark", Moments.now(), false, false, decoded);
  }

  @Override
  public void close() {
    ledger.close();
  }
}
