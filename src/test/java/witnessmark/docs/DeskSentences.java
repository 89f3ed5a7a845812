package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.badge.PrivateHalf;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Assign;
import witnessmark.desk.Attest;
import witnessmark.desk.BindWrench;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Command;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolKey;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.Measure;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.desk.ResumeJob;
import witnessmark.desk.RetireWrench;
import witnessmark.desk.SuspendJob;
import witnessmark.desk.Tried;
import witnessmark.desk.WithdrawKey;
import witnessmark.entry.Acknowledged;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.Role;
import witnessmark.pipeline.Bench;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** Provokes every refusal of people's commands. */
final class DeskSentences {
  private static final Optional<String> NOBODY = Optional.empty();
  private static final String BY = "badge-07";

  private final List<Said> said = new ArrayList<>();
  private final List<String> whole = new ArrayList<>();

  private DeskSentences() {}

  static List<Said> all() {
    return built().said;
  }

  /** What stands on the command line, where there is room for more. */
  static List<String> whole() {
    return built().whole;
  }

  private static DeskSentences built() {
    DeskSentences all = new DeskSentences();
    all.jobs();
    all.openings();
    all.steps();
    all.fasteners();
    all.registers();
    all.calibrations();
    all.keys();
    return all;
  }

  private void declined(String code, Bench bench, Command command) {
    declined(code, () -> bench.person(command));
  }

  private void declined(String code, Runnable command) {
    try {
      command.run();
    } catch (Declined no) {
      said.add(new Said("## Commands that are declined", code, no.sentence()));
      whole.add(no.getMessage());
      return;
    }
    assertThat(command).as("was to be declined").isNull();
  }

  private void calibrations() {
    Bench bench = RearAxle.bench();
    declined("wrench", bench, new RetireWrench("TW-0999", BY, "fell"));
    declined("wrench calibrate", bench, calibration("2026-11-26", "2026-11-26", "20", 5));
    declined("wrench calibrate", bench, calibration("2026-11-01", "2026-10-01", "20", 5));
    declined("wrench calibrate", bench, calibration("2026-11-01", "2027-11-01", "20", 3));
    declined("wrench calibrate", bench, calibration("2026-11-01", "2027-11-01", "90", 5));
    declined("wrench calibrate", bench, calibration("1926-11-25", "1", "20 60 100"));
    declined("wrench calibrate", bench, calibration("2026-11-01", "1", "20 60 100"));
    declined("wrench calibrate", bench, calibration("2026-11-25", "25", "20 60 100"));
    declined("wrench calibrate", bench, calibration("2026-11-25", "1", "20 60 100 120"));
    declined("wrench calibrate", bench, calibration("2026-11-25", "1", "20 60 100 20"));
  }

  private void keys() {
    Bench bench = Bench.without(RearAxle.TEXT);
    bench.enrol("badge-11", Role.QUALITY);
    PrivateHalf.Pair quality = PrivateHalf.generate();
    PrivateHalf.Pair other = PrivateHalf.generate();
    EnrolKey own = new EnrolKey("badge-11", quality.publicHalf().base64(), "badge-11");
    RetireWrench retire = new RetireWrench("TW-1", "badge-11", "fell");
    signed("operator key withdraw", bench, new WithdrawKey(BY, BY, "lost"), quality);
    declined("operator key enrol", () -> bench.decided(own, Optional.empty()));
    signed("operator key enrol", bench, new EnrolKey("badge-11", own.publicKey(), BY), quality);
    bench.decided(own, Optional.of(quality.privateHalf()::sign));
    signed("operator key enrol", bench, new EnrolKey(BY, own.publicKey(), "badge-11"), quality);
    declined("any", () -> bench.decided(retire, Optional.empty()));
    signed("any", bench, retire, other);
    signed("wrench bind", bench, new BindWrench("TW-1", List.of(), BY), quality);
    signed("wrench enrol", bench, Bench.wrench("TW-0502"), quality);
    signed("operator enrol", bench, new EnrolOperator("badge-12", "x", NOBODY), quality);
    WithdrawKey last = new WithdrawKey("badge-11", "badge-11", "lost");
    signed("operator key withdraw", bench, last, quality);
    EnrolKey instead = new EnrolKey("badge-11", other.publicHalf().base64(), "badge-11");
    signed("operator key enrol", bench, instead, quality);
  }

  private void signed(String code, Bench bench, Command command, PrivateHalf.Pair pair) {
    declined(code, () -> bench.decided(command, Optional.of(pair.privateHalf()::sign)));
  }

  private static CalibrateWrench calibration(String date, String uncertainty, String points) {
    return new CalibrateWrench(
        "TW-0417",
        "C-26-140",
        "calibration room",
        Instant.parse(date + "T00:00:00Z"),
        Optional.empty(),
        Optional.empty(),
        0,
        new Digits(uncertainty),
        List.of(),
        Stream.of(points.split(" "))
            .map(p -> Torque.parse(p + " N.m"))
            .map(t -> new Tried(t, Collections.nCopies(5, t)))
            .toList(),
        NOBODY);
  }

  private static CalibrateWrench calibration(String date, String due, String point, int readings) {
    Torque torque = Torque.parse(point + " N.m");
    return new CalibrateWrench(
        "TW-0417",
        "C-26-140",
        "calibration room",
        Instant.parse(date + "T00:00:00Z"),
        Optional.of(Instant.parse(due + "T00:00:00Z")),
        Optional.empty(),
        0,
        new Digits("1.0"),
        List.of(),
        List.of(new Tried(torque, Collections.nCopies(readings, torque))),
        NOBODY);
  }

  private void jobs() {
    Bench bench = Bench.without(RearAxle.TEXT);
    declined("job", bench, new AbandonJob("J-9", NOBODY, "cracked"));
    Bench open = RearAxle.bench();
    declined("job", open, new SuspendJob("J-9", NOBODY, NOBODY));
    declined("job close", open, new CloseJob("J-6", NOBODY));
    declined("job resume", open, new ResumeJob("J-6", NOBODY, NOBODY));
    open.person(new SuspendJob("J-6", NOBODY, NOBODY));
    declined("job suspend", open, new SuspendJob("J-6", NOBODY, NOBODY));
    declined("attest", open, new Attest("J-6", "frame-check", BY));
    open.person(new OpenJob("RAM-210", NOBODY, "ATR-26-0148", Bench.STATION, NOBODY));
    declined("job resume", open, new ResumeJob("J-6", NOBODY, NOBODY));
  }

  private void openings() {
    Bench open = RearAxle.bench();
    declined(
        "job open", open, new OpenJob("RAM-210", NOBODY, "ATR-26-0148", Bench.STATION, NOBODY));
    declined("job open", open, new OpenJob("RAM-210", NOBODY, "ATR-26-0147", "bench-2", NOBODY));
    declined("job open", open, new OpenJob("RAM-210", NOBODY, "ATR-25-1", "bench-2", NOBODY));
    declined("job open", open, new OpenJob("RAM-220", NOBODY, "ATR-26-0148", "bench-2", NOBODY));
    declined(
        "job open",
        open,
        new OpenJob("RAM-210", Optional.of("D"), "ATR-26-0148", "bench-2", NOBODY));
    Bench empty = Bench.empty();
    declined("job open", empty, new OpenJob("RAM-210", NOBODY, "ATR-26-0147", "bench-1", NOBODY));
  }

  private void steps() {
    Bench bench = RearAxle.bench();
    declined("any", bench, new Attest("J-6", "frame-check", "badge-99"));
    declined("attest", bench, new Attest("J-6", "hand-over", BY));
    declined("attest", bench, new Attest("J-6", "frame", BY));
    bench.person(new Attest("J-6", "frame-check", BY));
    declined("attest", bench, new Attest("J-6", "frame-check", BY));
    String gap =
        "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap\"\nunit = \"mm\"\n"
            + "labels = [\"left\", \"right\"]\nmin = \"3.0\"\nmax = \"5.0\"\n";
    Bench measuring = Bench.on(Bench.head() + gap);
    declined("measure", measuring, new Measure("J-5", "gap", List.of(new Digits("4.0")), BY));
    Bench plain = Bench.on(Bench.group(1));
    declined("measure", plain, new Measure("J-5", "gap", List.of(), BY));
  }

  private void fasteners() {
    Bench bench = RearAxle.atWork();
    Entry.TorqueTaken taken = bench.hit("TW-0417", "33 N.m", "30", "carrier-left/1");
    long n = bench.size() - 1;
    declined("assign", bench, new Assign(n, taken, "J-6", Optional.of("carrier-left/2"), BY, "x"));
    declined(
        "dispose", bench, new Dispose("J-6", "carrier-left/9", Disposition.REWORK, BY, "seen"));
    declined(
        "dispose", bench, new Dispose("J-6", "carrier-left/1", Disposition.REWORK, BY, "seen"));
    bench.hit("TW-0417", "60 N.m", "30", "carrier-left/3");
    bench.person(new Dispose("J-6", "carrier-left/3", Disposition.SCRAP, BY, "cracked"));
    declined(
        "dispose", bench, new Dispose("J-6", "carrier-left/3", Disposition.REWORK, BY, "seen"));
    deciders();
    Bench asked = RearAxle.asked();
    long question = asked.job().questions().iterator().next();
    Entry.TorqueTaken asks = (Entry.TorqueTaken) asked.log().get((int) question);
    Assign aside = new Assign(question, asks, "J-6", Optional.empty(), BY, "test rig");
    asked.person(aside);
    declined("assign", asked, aside);
    tooMuchForNone();
  }

  private void tooMuchForNone() {
    Bench bench = Bench.on(Bench.group(3));
    bench.enrol("badge-08", Role.TECHNICIAN);
    bench.hit("TW-1", "50 N.m", "30", "");
    Entry.TorqueTaken asks = bench.hit("TW-1", "60 N.m", "8", "");
    Assign aside =
        new Assign(
            bench.size() - 1, asks, bench.jobName(), Optional.empty(), "badge-08", "test rig");
    declined("assign", bench, aside);
  }

  private void deciders() {
    Bench bench = dangerous();
    bench.hit("TW-0417", "60 N.m", "", "carrier-left/1");
    declined("dispose", bench, decided(Disposition.REWORK, BY));
    declined("dispose", bench, decided(Disposition.USE_AS_IS, BY));
    declined("dispose", bench, decided(Disposition.REPLACE, "badge-08"));
    declined("dispose", bench, decided(Disposition.REPLACE, "badge-09"));
    bench.enrol(BY, Role.TECHNICIAN);
    declined("dispose", bench, decided(Disposition.SCRAP, BY));
    Bench own = dangerous();
    own.scan("badge-09");
    own.hit("TW-0417", "60 N.m", "", "carrier-left/1");
    declined("dispose", own, decided(Disposition.REPLACE, "badge-09"));
  }

  /** The job where a carrier bolt is dangerous, with a technician and a second person more. */
  private static Bench dangerous() {
    Bench bench = RearAxle.dangerous();
    bench.enrol("badge-08", Role.TECHNICIAN);
    bench.enrol("badge-09", Role.TECHNICIAN, Role.SECOND);
    return bench;
  }

  private static Dispose decided(Disposition disposition, String by) {
    return new Dispose("J-6", "carrier-left/1", disposition, by, "seen");
  }

  private void registers() {
    Bench bench = Bench.without(RearAxle.TEXT);
    declined("procedure release", bench, release(RearAxle.TEXT));
    declined("procedure release", bench, release(RearAxle.TEXT.replace("Hand-over", "Hand over")));
    acknowledging(bench);
    declined(
        "wrench enrol",
        bench,
        new EnrolWrench(
            "TW-0417",
            Torque.parse("20 N.m"),
            Torque.parse("100 N.m"),
            Bench.START.plusSeconds(864_000),
            Bench.START.plusSeconds(8_640_000),
            NOBODY,
            Optional.empty(),
            NOBODY));
  }

  private void acknowledging(Bench bench) {
    String doubtful = RearAxle.TEXT.replace("RAM-210", "RAM-220");
    declined("procedure release", bench, acknowledging(doubtful, NOBODY));
    declined("procedure release", bench, acknowledging(doubtful, Optional.of(BY)));
    String plain = doubtful.replace("after = [\"frame-check\"]\n", "");
    declined("procedure release", bench, acknowledging(plain, Optional.of(BY)));
  }

  private static Release acknowledging(String text, Optional<String> by) {
    return new Release(
        ProcedureFile.parse("RAM-220.toml", text),
        text,
        List.of(new Acknowledged("band-wide@pivot", "as the maker has it")),
        by);
  }

  private static Release release(String text) {
    return new Release(ProcedureFile.parse("RAM-210.toml", text), text, NOBODY);
  }
}
