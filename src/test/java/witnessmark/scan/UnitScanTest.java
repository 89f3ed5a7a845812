package witnessmark.scan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.desk.CloseJob;
import witnessmark.desk.OpenJob;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.JobState;
import witnessmark.pipeline.Bench;

/** A unit's number, a job's name and a procedure, scanned. */
class UnitScanTest {
  private static final String UNIT = "ATR-26-0147";

  private final Bench bench = Bench.without(procedure("RAM-210", "A", "ATR-26-[0-9]{4}"));

  private static String procedure(String id, String revision, String units) {
    return Bench.group(2)
        .replace("\"P-1\"", "\"" + id + "\"")
        .replace("revision = \"A\"", "revision = \"" + revision + "\"")
        .replace(
            "title = \"Test\"\n",
            "title = \"Test\"\n" + (units.isEmpty() ? "" : "unit-pattern = \"" + units + "\"\n"));
  }

  private Optional<String> open(String station) {
    return bench.shop().active(station).map(JobState::job);
  }

  private void declined(Entry.Scan scan, String text) {
    assertThat(scan.meaning()).isEqualTo(Meaning.DECLINED);
    assertThat(scan.text()).isEqualTo(text);
    assertThat(bench.log().get(bench.log().size() - 1)).as("nothing follows it").isEqualTo(scan);
  }

  @Test
  void aUnitThatFitsOneProcedureOpensItsJobByWhoeverWorksThere() {
    bench.scan("badge-07");
    Entry.Scan scan = bench.scanned(UNIT);
    assertThat(scan.meaning()).isEqualTo(Meaning.OPEN);
    assertThat(scan.job()).contains("J-8");
    assertThat(scan.text())
        .isEqualTo(
            "Opened J-8 on unit ATR-26-0147 by RAM-210 revision A. "
                + "Next: a/1, final pass, 50 N.m (45 to 55 N.m).");
    assertThat(bench.log().get(7)).isEqualTo(scan);
    assertThat(bench.log().get(8))
        .isEqualTo(
            new Entry.JobOpened(
                scan.at(), "J-8", UNIT, Bench.STATION, "RAM-210", "A", 4, Optional.of("badge-07")));
    assertThat(open(Bench.STATION)).contains("J-8");
  }

  @Test
  void theNewestRevisionDecidesWhichUnitsFit() {
    bench.release(procedure("RAM-210", "B", "ATR-27-[0-9]{4}"));
    assertThat(bench.scanned(UNIT).meaning()).isEqualTo(Meaning.NOTHING);
    assertThat(bench.scanned("ATR-27-0001").meaning()).isEqualTo(Meaning.OPEN);
    assertThat(bench.shop().active(Bench.STATION).orElseThrow().plan().procedure().revision())
        .isEqualTo("B");
  }

  @Test
  void aUnitMustFitAsAWholeAndAProcedureForAnyUnitIsNeverGuessed() {
    bench.release(procedure("RAM-900", "A", ""));
    for (String other : List.of("ATR-26-01470", "xATR-26-0147", "4012345678901", "atr-26-0147")) {
      assertThat(bench.scanned(other).meaning()).as(other).isEqualTo(Meaning.NOTHING);
    }
    assertThat(bench.scanned(UNIT).meaning()).isEqualTo(Meaning.OPEN);
  }

  @Test
  void aBusyStationSaysWhatToDo() {
    bench.scan(UNIT);
    declined(
        bench.scanned("ATR-26-0148"),
        "Station bench-1 has job J-6 on unit ATR-26-0147; suspend or close that first.");
    bench.scan("wm:suspend");
    assertThat(bench.scanned("ATR-26-0148").meaning()).isEqualTo(Meaning.OPEN);
  }

  @Test
  void aUnitWhoseJobIsOpenIsToldWhere() {
    bench.scan(UNIT);
    Entry.Scan here = bench.scanned(UNIT);
    assertThat(here.meaning()).isEqualTo(Meaning.STATUS);
    assertThat(here.text())
        .isEqualTo(
            "J-6 on unit ATR-26-0147 is open here already. "
                + "Next: a/1, final pass, 50 N.m (45 to 55 N.m).");
    declined(
        bench.scanned("bench-2", UNIT),
        "Job J-6 is not suspended: it is open at bench-1. "
            + "Go on there, or suspend it there first.");
  }

  @Test
  void aSuspendedUnitIsResumedWhereItIsScanned() {
    bench.scan(UNIT);
    bench.hit("50 N.m");
    bench.scan("wm:suspend");
    Entry.Scan scan = bench.scanned("bench-2", UNIT);
    assertThat(scan.meaning()).isEqualTo(Meaning.RESUME);
    assertThat(scan.job()).contains("J-6");
    assertThat(scan.text())
        .isEqualTo(
            "Resumed J-6 on unit ATR-26-0147. Next: a/2, final pass, 50 N.m (45 to 55 N.m).");
    assertThat(open("bench-2")).contains("J-6");
    assertThat(open(Bench.STATION)).isEmpty();
  }

  @Test
  void aJobsNameIsResumedHere() {
    bench.scan(UNIT);
    declined(
        bench.scanned("J-6"),
        "Job J-6 is not suspended: it is open at bench-1. "
            + "Go on there, or suspend it there first.");
    bench.scan("wm:suspend");
    assertThat(bench.scanned("J-6").meaning()).isEqualTo(Meaning.RESUME);
    assertThat(open(Bench.STATION)).contains("J-6");
    declined(bench.scanned("J-99"), "No job J-99 is open or suspended; name one of J-6.");
  }

  @Test
  void amongSeveralFittingProceduresTheOneScannedFirstIsTaken() {
    bench.release(procedure("RAM-220", "A", "ATR-.*"));
    declined(
        bench.scanned(UNIT),
        "Unit ATR-26-0147 fits RAM-210, RAM-220. Scan the procedure first, then the unit.");
    Entry.Scan choice = bench.scanned("RAM-220");
    assertThat(choice.meaning()).isEqualTo(Meaning.PROCEDURE);
    assertThat(choice.procedure()).contains("RAM-220");
    assertThat(choice.text())
        .isEqualTo(
            "The next unit scanned at bench-1 is worked by RAM-220 revision A. Scan the unit.");
    // it holds for this station only, whoever scans a badge in between, and for one unit
    bench.scan("badge-07");
    declined(
        bench.scanned("bench-2", UNIT),
        "Unit ATR-26-0147 fits RAM-210, RAM-220. Scan the procedure first, then the unit.");
    assertThat(bench.scanned(UNIT).procedure()).contains("RAM-220");
    assertThat(bench.shop().active(Bench.STATION).orElseThrow().plan().procedure().id())
        .isEqualTo("RAM-220");
    bench.scan("wm:suspend");
    declined(
        bench.scanned("ATR-26-0148"),
        "Unit ATR-26-0148 fits RAM-210, RAM-220. Scan the procedure first, then the unit.");
  }

  @Test
  void aChoiceIsUsedUpByTheNextUnitEvenWhenThatIsDeclined() {
    bench.scan("RAM-210");
    declined(
        bench.scanned("4012345678901"),
        "Unit 4012345678901 does not fit RAM-210, which is for units like ATR-26-[0-9]{4}."
            + " Check both. RAM-210 is no longer chosen: scan it again if you want it.");
    assertThat(bench.shop().chosen()).isEmpty();
    assertThat(bench.scanned("4012345678901").meaning()).isEqualTo(Meaning.NOTHING);
  }

  @Test
  void aChosenProcedureOpensAnotherJobOnAUnitThatHasOne() {
    bench.release(procedure("RAM-900", "A", ""));
    bench.scan(UNIT);
    bench.scan("wm:suspend");
    bench.scan("RAM-900");
    assertThat(bench.scanned(UNIT).meaning()).isEqualTo(Meaning.OPEN);
    bench.scan("wm:suspend");
    declined(
        bench.scanned(UNIT),
        "Unit ATR-26-0147 has several suspended jobs: J-7 by RAM-210, J-12 by RAM-900."
            + " Scan the job's name or the procedure first.");
    bench.scan("RAM-210");
    Entry.Scan resumed = bench.scanned(UNIT);
    assertThat(resumed.meaning()).isEqualTo(Meaning.RESUME);
    assertThat(resumed.job()).contains("J-7");
    assertThat(resumed.procedure()).contains("RAM-210");
  }

  @Test
  void theLogAloneGivesTheSameChoiceAlsoAfterItsJobEnded() {
    bench.scan("RAM-210");
    assertThat(bench.replayed().chosen()).isEqualTo(bench.shop().chosen()).hasSize(1);
    bench.scan(UNIT);
    bench.hit("50 N.m");
    bench.hit("50 N.m");
    bench.person(new CloseJob(open(Bench.STATION).orElseThrow(), Optional.empty()));
    assertThat(bench.replayed().chosen()).isEqualTo(bench.shop().chosen()).isEmpty();
  }

  @Test
  void whatCouldNotBeANameMeansNothingAndIsNotShown() {
    for (String text : List.of("ATR-26-0147\n", "a\u001db", "x".repeat(65), " ATR-26-0147", "")) {
      if (!text.isEmpty()) {
        Entry.Scan scan = bench.scanned(text);
        assertThat(scan.meaning()).isEqualTo(Meaning.NOTHING);
        assertThat(scan.text())
            .isEqualTo(
                "This code means nothing at bench-1: scan a badge, a unit, a job, a procedure,"
                    + " or a position or step of the job here.");
      }
    }
  }

  @Test
  void theSameCodeTwiceInAMomentIsOneScan() {
    bench.scan(UNIT);
    Entry.Scan again =
        (Entry.Scan) bench.scan(Bench.STATION, UNIT, Optional.empty(), false).entries().get(0);
    assertThat(again.meaning()).isEqualTo(Meaning.REPEATED);
    assertThat(again.job()).isEmpty();
    bench.rest(4);
    Entry.Scan later =
        (Entry.Scan) bench.scan(Bench.STATION, UNIT, Optional.empty(), false).entries().get(0);
    assertThat(later.meaning()).isEqualTo(Meaning.STATUS);
    bench.rest(3600);
    Entry.Scan redelivered =
        (Entry.Scan) bench.scan(Bench.STATION, UNIT, Optional.empty(), true).entries().get(0);
    assertThat(redelivered.meaning()).isEqualTo(Meaning.REPEATED);
    Entry.Scan other =
        (Entry.Scan)
            bench.scan(Bench.STATION, "wm:suspend", Optional.empty(), true).entries().get(0);
    assertThat(other.meaning()).as("not on record yet").isEqualTo(Meaning.SUSPEND);
  }

  @Test
  void noUnitAndNoBadgeCanBeCalledLikeACommand() {
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> new OpenJob("RAM-210", Optional.empty(), "wm:close", "bench-1", Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("unit must not begin with wm:, which begins the commands of scanners");
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> new witnessmark.desk.EnrolOperator("wm:close", "x", Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("badge must not begin with wm:, which begins the commands of scanners");
  }
}
