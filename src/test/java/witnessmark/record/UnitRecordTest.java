package witnessmark.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Assign;
import witnessmark.desk.Attest;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Dispose;
import witnessmark.desk.ResumeJob;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.pipeline.Bench;
import witnessmark.record.JobRecord.Outcome;
import witnessmark.record.PassRecord.State;
import witnessmark.report.Phrases;
import witnessmark.report.RecordText;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;

/** The record of a unit, gathered from a real log. */
class UnitRecordTest {
  private static final String UNIT = "ATR-26-0147";
  private static final Optional<String> BY = Optional.of("badge-07");

  @TempDir private Path directory;

  private int made;

  private UnitRecord recorded(Bench bench) {
    Shelf shelf = new Shelf(directory.resolve("log" + ++made), bench.log());
    return UnitRecord.of(Gather.read(shelf.unit(UNIT)));
  }

  private JobRecord job(Bench bench) {
    UnitRecord unit = recorded(bench);
    assertThat(unit.jobs()).hasSize(1);
    return unit.jobs().get(0);
  }

  private static Bench wired(int n) {
    return Bench.on(
        Bench.group(n)
            + "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\nstatement = \"Fitted.\"\n");
  }

  private static void close(Bench bench) {
    bench.person(new Attest(bench.jobName(), "wire", "badge-07"));
    bench.person(new CloseJob(bench.jobName(), BY));
  }

  @Test
  void everyTryIsThereAndTheAcceptedOneStands() {
    Bench bench = wired(2);
    bench.hit("40 N.m");
    bench.hit("50.10 N.m");
    bench.hit("51 N.m");
    close(bench);

    JobRecord job = job(bench);

    assertThat(job.outcome()).isEqualTo(Outcome.CLOSED);
    assertThat(job.passes()).extracting(PassRecord::state).containsOnly(State.STANDS);
    PassRecord first = job.passes().get(0);
    assertThat(first.attempts())
        .extracting(Attempt::outcome)
        .containsExactly("under-torque", "in-band");
    assertThat(first.shown().orElseThrow().taken().event().torque()).hasToString("50.10 N.m");
    assertThat(job.gates()).hasSize(1).allMatch(g -> g.by().isPresent());
    assertThat(job.missing()).isEmpty();
    assertThat(job.deviations()).isEmpty();
    assertThat(job.wrenches()).extracting(w -> w.serial()).containsExactly("TW-1");
    assertThat(job.people()).extracting(Person::badge).containsExactly("badge-07");
  }

  @Test
  void theEndCountsTheEntriesSoThatOneLeftOutIsNoticed() {
    Bench bench = wired(2);
    bench.hit("40 N.m");
    bench.hit("50 N.m");
    bench.scan("badge-07");
    bench.hit("51 N.m");
    close(bench);
    Shelf shelf = new Shelf(directory.resolve("whole"), bench.log());
    SortedMap<Long, Entry> entries = Gather.read(shelf.unit(UNIT));
    JobRecord whole = UnitRecord.of(entries).jobs().get(0);
    assertThat(whole.count()).isEqualTo(6);
    assertThat(whole.whole()).contains(true);

    long under =
        entries.entrySet().stream()
            .filter(e -> e.getValue() instanceof Entry.TorqueTaken)
            .map(java.util.Map.Entry::getKey)
            .findFirst()
            .orElseThrow();
    SortedMap<Long, Entry> less = new TreeMap<>(entries);
    less.remove(under);
    JobRecord lacking = UnitRecord.of(less).jobs().get(0);
    assertThat(lacking.whole()).contains(false);
    assertThat(Phrases.wholeness(lacking))
        .isEqualTo("ENTRIES ARE MISSING: the job's end counts 6, and 5 are here.");
  }

  @Test
  void anOlderEndTellsNothingOfWholeness() {
    Bench bench = wired(1);
    bench.hit("50 N.m");
    close(bench);
    SortedMap<Long, Entry> entries =
        Gather.read(new Shelf(directory.resolve("old"), bench.log()).unit(UNIT));
    Entry.JobClosed closed = (Entry.JobClosed) entries.get(entries.lastKey());
    entries.put(
        entries.lastKey(),
        new Entry.JobClosed(
            closed.at(), closed.job(), closed.by(), java.util.OptionalLong.empty()));
    assertThat(UnitRecord.of(entries).jobs().get(0).whole()).isEmpty();
  }

  @Test
  void aNonconformityStandsWithItsDecisionAndWhoMadeItAs() {
    Bench bench = wired(2);
    bench.hit("50 N.m");
    bench.hit("60 N.m");
    assertThat(job(bench).missing())
        .containsExactly(
            "a/2: nonconforming since entry 7, and nobody decided on it.", "wire, Wire: not done.");
    assertThat(job(bench).passes().get(1).state()).isEqualTo(State.NONCONFORMING);
    bench.person(
        new Dispose(
            bench.jobName(),
            "a/2",
            Disposition.USE_AS_IS,
            "badge-07",
            Optional.of("K-7"),
            "washer face unmarked"));
    close(bench);

    JobRecord job = job(bench);

    assertThat(job.passes().get(1).state()).isEqualTo(State.CONCEDED);
    assertThat(job.passes().get(1).by()).hasValue(8);
    Deviation deviation = job.deviations().get(0);
    assertThat(deviation.open()).isFalse();
    assertThat(Phrases.decision(deviation.decisions().get(0)))
        .isEqualTo(
            "use-as-is by badge-07 as quality under concession K-7: washer face unmarked (not signed)");
    assertThat(job.standing()).isEqualTo(2);
  }

  @Test
  void whatWasUndoneIsToldFromWhatStands() {
    Bench bench = wired(1);
    bench.hitOn("a/1", "50 N.m");
    bench.loosen("a/1");
    bench.hitOn("a/1", "52 N.m");
    close(bench);

    JobRecord job = job(bench);

    PassRecord pass = job.passes().get(0);
    assertThat(pass.shown().orElseThrow().taken().event().torque()).hasToString("52 N.m");
    assertThat(pass.attempts().get(0).undone()).isTrue();
    assertThat(pass.attempts()).filteredOn(Attempt::stands).hasSize(1);
    assertThat(RecordText.of(recorded(bench)))
        .anyMatch(l -> l.contains("also") && l.contains("in-band, undone"))
        .anyMatch(l -> l.contains("loosened"));
  }

  @Test
  void aReadingThatAskedIsThereWithItsAnswer() {
    Bench bench =
        Bench.on(
            Bench.group(2, "order = \"any\"")
                + Bench.step("b", 2, "after = []", "order = \"any\""));
    bench.hit("50 N.m");
    long asked = bench.size() - 1;
    JobRecord open = job(bench);
    assertThat(open.unplaced()).hasSize(1).allMatch(Unplaced::asks);
    assertThat(open.missing().get(0))
        .isEqualTo("Reading of entry " + asked + ": nobody said which fastener it was on.");
    bench.person(
        new Assign(
            asked,
            (Entry.TorqueTaken) bench.log().get((int) asked),
            bench.jobName(),
            Optional.of("b/2"),
            "badge-07",
            "saw it"));
    bench.hit("52 N.m");
    long second = bench.size() - 1;
    bench.person(
        new Assign(
            second,
            (Entry.TorqueTaken) bench.log().get((int) second),
            bench.jobName(),
            Optional.empty(),
            "badge-07",
            "tried on scrap"));

    JobRecord job = job(bench);

    PassRecord placed = job.passes().get(3);
    assertThat(placed.fastener()).isEqualTo("b/2");
    assertThat(placed.state()).isEqualTo(State.STANDS);
    assertThat(placed.shown().orElseThrow().entry()).isEqualTo(asked);
    assertThat(placed.shown().orElseThrow().decidedBy()).isEqualTo(asked + 1);
    assertThat(job.unplaced()).hasSize(1).noneMatch(Unplaced::asks);
    assertThat(Phrases.unplaced(job.unplaced().get(0)))
        .isEqualTo("several-possible; entry " + second + " set aside by badge-07: tried on scrap");
    assertThat(job.corrections()).hasSize(2);
  }

  @Test
  void aReadingBeforeTheJobThatAPersonPlacedComesWithIt() {
    Bench bench = Bench.without(Bench.group(2));
    bench.hit("50 N.m");
    long before = bench.size() - 1;
    bench.open(UNIT);
    bench.person(
        new Assign(
            before,
            (Entry.TorqueTaken) bench.log().get((int) before),
            bench.jobName(),
            Optional.of("a/1"),
            "badge-07",
            "job was not open yet"));

    JobRecord job = job(bench);

    Attempt attempt = job.passes().get(0).shown().orElseThrow();
    assertThat(attempt.entry()).isEqualTo(before);
    assertThat(attempt.wrench()).isPresent();
    assertThat(attempt.stands()).isTrue();
  }

  @Test
  void whatCameLateIsReadAgainAndWhatCameAfterTheEndIsAFinding() {
    Bench bench = Bench.on(Bench.group(2));
    TorqueEvent held = bench.event("TW-2", "40 N.m", "", Direction.CW, "a/1");
    bench.hit("50 N.m");
    bench.person(new SuspendJob(bench.jobName(), BY, Optional.of("waiting for a part")));
    bench.person(new ResumeJob(bench.jobName(), Optional.empty(), BY));
    TorqueEvent never = bench.event("TW-2", "70 N.m", "", Direction.CW, "a/2");
    bench.rest(60);
    bench.takeStored(held);
    bench.person(new AbandonJob(bench.jobName(), BY, "frame cracked"));
    bench.takeStored(never);

    JobRecord job = job(bench);

    assertThat(job.outcome()).isEqualTo(Outcome.ABANDONED);
    assertThat(job.life())
        .extracting(n -> Phrases.life(n.entry()))
        .containsExactly(
            "opened at bench-1",
            "suspended by badge-07: waiting for a part",
            "resumed at bench-1 by badge-07",
            "abandoned incomplete by badge-07: frame cracked");
    assertThat(job.passes().get(0).attempts())
        .extracting(Attempt::clock)
        .contains("wrench's clock, came late");
    assertThat(job.late()).hasSize(1);
    assertThat(job.late().get(0).taken().event().torque()).hasToString("70 N.m");
    assertThat(job.whole()).contains(true);
    assertThat(job.missing()).containsExactly("a/2: final pass not done.");
  }

  @Test
  void readingsCreditedByCountAreMarkedAndNamedOnesAreNot() {
    Bench counted = Bench.on(Bench.group(3, "order = \"any\""));
    counted.hit("50 N.m");
    counted.hit("51 N.m");
    counted.hit("52 N.m");
    assertThat(job(counted).passes())
        .extracting(p -> p.shown().orElseThrow().judged().reason().code())
        .containsExactly("counted-in-group", "counted-in-group", "next-in-sequence");
    assertThat(job(counted).readings())
        .as("the last one is no better known")
        .allMatch(Attempt::byCount);
    assertThat(RecordText.of(recorded(counted)))
        .anyMatch(l -> l.matches(" *a/1 \\*  +50 N\\.m .*"))
        .anyMatch(l -> l.startsWith("    *: one of its group, and it is not known which."));

    Bench named = Bench.on(Bench.group(3, "order = \"any\""));
    named.hitOn("a/2", "50 N.m");
    named.hitOn("a/3", "51 N.m");
    named.hit("52 N.m");
    assertThat(job(named).readings()).noneMatch(Attempt::byCount);
    assertThat(RecordText.of(recorded(named))).noneMatch(l -> l.contains("*"));

    Bench ordered = Bench.on(Bench.group(3));
    ordered.hit("50 N.m");
    assertThat(job(ordered).readings()).hasSize(1).noneMatch(Attempt::byCount);
  }

  @Test
  void aReadingInAnotherUnitThanItsBandIsShownInBoth() {
    Bench bench =
        Bench.on(
            Bench.head()
                + "[[step]]\nid = \"a\"\nkind = \"tighten\"\ntitle = \"a\"\nfasteners = 1\n"
                + "torque = \"17.0 lbf.ft\"\ntolerance = \"10 %\"\n");
    bench.hit("23.19 N.m");
    assertThat(RecordText.of(recorded(bench)))
        .as("23.19 / 1.3558179483314004 is 17.104")
        .anyMatch(l -> l.contains("23.19 N.m ~17.10 lbf.ft  "))
        .anyMatch(l -> l.startsWith("    ~: converted to the unit of the band"));
  }

  @Test
  void whatHasNoVerdictStandsInBracketsAndReadingsWithoutABadgeAreCounted() {
    Bench bench = wired(1);
    bench.hitOn("a/1", "50 N.m");
    bench.loosen("a/1");
    assertThat(RecordText.of(recorded(bench)))
        .anyMatch(l -> l.contains("(loosened)"))
        .contains("  No badge is on record for 2 of 2 readings.");
  }

  @Test
  void anOpenJobAndASuspendedOneSaySo() {
    Bench bench = wired(1);
    assertThat(job(bench).outcome()).isEqualTo(Outcome.OPEN);
    bench.person(new SuspendJob(bench.jobName(), BY, Optional.empty()));
    JobRecord job = job(bench);
    assertThat(job.outcome()).isEqualTo(Outcome.SUSPENDED);
    assertThat(Phrases.wholeness(job))
        .isEqualTo("The job has not ended: there may be more entries of it.");
  }

  @Test
  void aUnitHasEveryJobOfItAndNoneOfAnother() {
    Bench bench = wired(1);
    bench.person(new AbandonJob(bench.jobName(), BY, "began anew"));
    bench.open("ATR-26-0148");
    bench.hit("50 N.m");
    close(bench);
    bench.open(UNIT);
    bench.hit("51 N.m");
    close(bench);

    UnitRecord unit = recorded(bench);

    assertThat(unit.jobs())
        .extracting(JobRecord::outcome)
        .containsExactly(Outcome.ABANDONED, Outcome.CLOSED);
    assertThat(unit.ended()).isTrue();
    assertThat(unit.jobs()).allMatch(j -> j.whole().orElse(false));
  }

  @Test
  void aLaboratorysCertificateIsShownFromItsDayOn() {
    Bench bench = wired(2);
    bench.hit("50 N.m");
    bench.rest(86_400);
    bench.person(
        new witnessmark.desk.CalibrateWrench(
            "TW-1",
            "C-26-140",
            "calibration room",
            bench.now().truncatedTo(java.time.temporal.ChronoUnit.DAYS),
            Optional.empty(),
            Optional.empty(),
            0,
            new witnessmark.torque.Digits("1.2"),
            List.of(),
            java.util.stream.Stream.of("20 N.m", "60 N.m", "100 N.m")
                .map(witnessmark.torque.Torque::parse)
                .map(t -> new witnessmark.desk.Tried(t, java.util.Collections.nCopies(5, t)))
                .toList(),
            BY));
    bench.hit("51 N.m");

    assertThat(job(bench).passes())
        .extracting(p -> p.shown().orElseThrow().wrench().orElseThrow().certificate())
        .containsExactly(Optional.empty(), Optional.of("C-26-140"));
  }

  @Test
  void theCalibrationShownIsTheOneOfTheDay() {
    Bench bench = wired(2);
    bench.hit("50 N.m");
    bench.rest(86_400);
    bench.person(
        new witnessmark.desk.EnrolWrench(
            "TW-1",
            witnessmark.torque.Torque.parse("20 N.m"),
            witnessmark.torque.Torque.parse("100 N.m"),
            bench.now().minusSeconds(10),
            bench.now().plusSeconds(86_400L * 100),
            Optional.of("C-26-130"),
            Optional.empty(),
            BY));
    bench.hit("51 N.m");

    JobRecord job = job(bench);

    assertThat(job.passes())
        .extracting(p -> p.shown().orElseThrow().wrench().orElseThrow().certificate())
        .containsExactly(Optional.empty(), Optional.of("C-26-130"));
    assertThat(job.wrenches()).hasSize(2);
  }

  @Test
  void entriesThatAreNoRecordAreRefused() {
    assertThatThrownBy(() -> UnitRecord.of(new TreeMap<>()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("these entries make no record: none opens a job");
    Bench bench = wired(1);
    bench.hit("50 N.m");
    SortedMap<Long, Entry> entries =
        Gather.read(new Shelf(directory.resolve("torn"), bench.log()).unit(UNIT));
    entries.values().removeIf(e -> e instanceof Entry.ProcedureReleased);
    assertThatThrownBy(() -> UnitRecord.of(entries))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("these entries make no record: ");
  }

  @Test
  void thePageForATerminalKeepsToItsWidth() {
    Bench bench = wired(2);
    bench.hit("40 N.m");
    bench.hit("50 N.m");
    bench.hit("60 N.m");
    List<String> lines = RecordText.of(recorded(bench));
    assertThat(lines).allMatch(l -> l.length() <= 100);
    assertThat(lines).contains("UNIT " + UNIT, "MISSING");
  }
}
