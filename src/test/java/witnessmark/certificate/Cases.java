package witnessmark.certificate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Attest;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.Measure;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Role;
import witnessmark.ledger.Bundle;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Bench;
import witnessmark.record.Shelf;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** Units of any size, worked on with some mistakes, in a real log. */
final class Cases {
  static final String UNIT = "ATR-26-0147";
  static final String PROGRAM = "Witnessmark test";
  private static final int GROUP = 12;

  private Cases() {}

  /** A closed job on a unit with so many fasteners, with some under and one over its band. */
  static Bench closed(int fasteners, String unit, String title) {
    Bench bench = begun(fasteners, unit, title);
    bench.person(
        new Measure(
            bench.jobName(), "gap", List.of(new Digits("3.9"), new Digits("4.0")), "badge-07"));
    bench.person(new Attest(bench.jobName(), "wire", "badge-07"));
    bench.person(new CloseJob(bench.jobName(), Optional.of("badge-07")));
    return bench;
  }

  /** The same job before its last steps. */
  static Bench begun(int fasteners, String unit, String title) {
    Bench bench = Bench.empty();
    for (String wrench : List.of("TW-0417", "TW-0502")) {
      bench.person(
          new EnrolWrench(
              wrench,
              Torque.parse("20 N.m"),
              Torque.parse("100 N.m"),
              Bench.START.minusSeconds(86_400 * 40),
              Bench.START.plusSeconds(86_400L * 300),
              Optional.of("C-26-118"),
              Optional.of(new Digits("1.0")),
              Optional.of("badge-07")));
    }
    bench.person(
        new EnrolOperator(
            "badge-11",
            Optional.of("Qualität, Ποιότητα, Качество"),
            List.of(Role.QUALITY),
            Optional.empty()));
    bench.release(procedure(fasteners, title));
    bench.open(unit);
    work(bench, fasteners);
    return bench;
  }

  private static void work(Bench bench, int fasteners) {
    Random random = new Random(7);
    for (int i = 0; i < fasteners; i++) {
      String fastener = "group-" + (char) ('a' + i / GROUP) + "/" + (i % GROUP + 1);
      if (i % 9 == 4) {
        pull(bench, fastener, "41." + random.nextInt(10), "20");
      }
      if (i % 40 == 25) {
        Effect effect = pull(bench, fastener, "58.4", "44.0");
        if (effect == Effect.NONCONFORMING) {
          bench.person(
              new Dispose(
                  bench.jobName(),
                  fastener,
                  Disposition.REPLACE,
                  "badge-11",
                  Optional.empty(),
                  "overtightened: new bolt fitted, thread looked at and found clean"));
        }
      }
      pull(
          bench,
          fastener,
          "4" + (8 + random.nextInt(2)) + "." + random.nextInt(100),
          "3" + random.nextInt(10) + ".5");
    }
  }

  private static Effect pull(Bench bench, String fastener, String torque, String angle) {
    TorqueEvent event = bench.event("TW-0417", torque + " N.m", angle, Direction.CW, fastener);
    TorqueEvent named =
        new TorqueEvent(
            event.wrench(),
            event.number(),
            event.time(),
            event.torque(),
            event.angle(),
            event.direction(),
            event.fastener(),
            Optional.of("badge-07"));
    return ((witnessmark.entry.Entry.TorqueTaken) bench.take(named).entries().get(0))
        .judged()
        .effect();
  }

  static String procedure(int fasteners, String title) {
    StringBuilder text =
        new StringBuilder(
            "[procedure]\nid = \"RAM-210\"\nrevision = \"C\"\ntitle = \"" + title + "\"\n");
    for (int from = 0; from < fasteners; from += GROUP) {
      char name = (char) ('a' + from / GROUP);
      text.append("[[step]]\nid = \"group-" + name + "\"\nkind = \"tighten\"\n")
          .append("title = \"Cross-member to frame, " + name + "\"\n")
          .append("fasteners = " + Math.min(GROUP, fasteners - from) + "\norder = \"any\"\n")
          .append("acceptance = \"guarded\"\ncriticality = \"function\"\n")
          .append("[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"12 %\"\n");
    }
    return text
        + "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap left and right\"\n"
        + "labels = [\"left\", \"right\"]\nunit = \"mm\"\nmin = \"3.0\"\nmax = \"5.0\"\n"
        + "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Safety wire\"\n"
        + "statement = \"Both pivot bolts are safety-wired, wire pulling to tighten.\"\n";
  }

  /** The job abandoned with something open. */
  static Bench abandoned(int fasteners) {
    Bench bench = begun(fasteners, UNIT, "Rear-axle module");
    bench.person(new AbandonJob(bench.jobName(), Optional.of("badge-07"), "frame cracked"));
    return bench;
  }

  static Proved proved(Path directory, Bench bench, String unit) {
    Shelf shelf = new Shelf(directory, bench.log());
    SortedMap<Long, byte[]> entries = shelf.unit(unit);
    try (SqliteReading reading = SqliteReading.open(shelf.files())) {
      byte[] bundle = Bundle.of(reading, new ArrayList<>(entries.keySet()));
      return Proved.of(entries, bundle);
    }
  }
}
