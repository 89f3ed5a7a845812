package witnessmark.tamper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.Tried;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.verify.ExportRoot;
import witnessmark.pipeline.Bench;
import witnessmark.record.Shelf;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** What happened in a shop, and logs made of it by the program's own writer. */
final class History {
  private History() {}

  /** Two jobs of 120 fasteners with mistakes and dispositions, and a calibration. */
  static List<Entry> entries(long seed) {
    Random random = new Random(seed);
    Bench bench = Bench.on(Bench.group(120));
    job(bench, random);
    bench.person(calibration(bench));
    bench.open("ATR-26-0148");
    job(bench, random);
    return bench.log();
  }

  private static void job(Bench bench, Random random) {
    for (int i = 1; i <= 120; i++) {
      String fastener = "a/" + i;
      if (random.nextInt(8) == 0) {
        bench.hitOn(fastener, "4" + random.nextInt(5) + ".0 N.m");
      }
      if (random.nextInt(30) == 0
          && bench.hitOn(fastener, "58.4 N.m").judged().effect() == Effect.NONCONFORMING) {
        bench.person(
            new Dispose(
                bench.jobName(),
                fastener,
                Disposition.REPLACE,
                "badge-07",
                Optional.empty(),
                "overtightened: new bolt fitted"));
      }
      bench.hitOn(fastener, "5" + random.nextInt(4) + "." + random.nextInt(100) + " N.m");
    }
    Optional<String> by = Optional.of("badge-07");
    try {
      bench.person(new CloseJob(bench.jobName(), by));
    } catch (Declined open) {
      bench.person(new AbandonJob(bench.jobName(), by, "frame cracked"));
    }
  }

  private static CalibrateWrench calibration(Bench bench) {
    List<Tried> points = new ArrayList<>();
    for (String at : List.of("20", "60", "100")) {
      points.add(
          new Tried(
              Torque.parse(at + " N.m"), Collections.nCopies(5, Torque.parse(at + ".0 N.m"))));
    }
    return new CalibrateWrench(
        "TW-2",
        "C-26-140",
        "calibration room",
        bench.now().truncatedTo(ChronoUnit.DAYS),
        Optional.empty(),
        Optional.empty(),
        0,
        new Digits("1.0"),
        List.of(),
        points,
        Optional.empty());
  }

  /** The key that a log was made with. */
  static LogKey key(Path directory) {
    try {
      return LogKey.read(
          Files.readString(directory.resolve("ledger.key")),
          Files.readString(directory.resolve("ledger.pub")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A log of these entries with every row that follows, and this checkpoint and key line. */
  static void write(Path directory, List<Entry> entries, String note, String verifierLine) {
    new Shelf(directory, entries);
    Copy copy = new Copy(directory);
    copy.put("UPDATE checkpoint SET note = ?", note);
    copy.write(copy.verifier(), (verifierLine + "\n").getBytes());
  }

  /** The checkpoint that the key makes over these entries. */
  static String signed(LogKey key, List<Entry> entries) {
    byte[] root = ExportRoot.mth(entries.stream().map(EntryJson::bytes).toList());
    return key.checkpoint(entries.size(), root);
  }
}
