package witnessmark.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.CheckWrench;
import witnessmark.desk.Tried;
import witnessmark.entry.Entry;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Bench;
import witnessmark.recall.Finding;
import witnessmark.recall.Histories;
import witnessmark.recall.Rejudged;
import witnessmark.recall.Survey;
import witnessmark.report.RecordText;
import witnessmark.report.Remarks;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** What a unit's record says of a wrench that was found out of tolerance after it. */
class FoundLaterTest {
  private static final String UNIT = "ATR-26-0147";

  @TempDir private Path directory;

  private int made;

  private List<OutOfTolerance> found(Bench bench) {
    return record(bench).foundLater();
  }

  private UnitRecord record(Bench bench) {
    Shelf shelf = new Shelf(directory.resolve("log" + ++made), bench.log());
    return UnitRecord.of(Gather.read(shelf.unit(UNIT)));
  }

  private static Bench worked() {
    Bench bench = Bench.on(Bench.group(3));
    bench.hit("50 N.m");
    bench.hit("TW-2", "51 N.m", "", "");
    bench.hit("52 N.m");
    return bench;
  }

  private static List<Tried> points(String... points) {
    return Stream.of(points)
        .map(p -> p.split(":"))
        .map(
            p ->
                new Tried(
                    Torque.parse(p[0] + " N.m"),
                    Collections.nCopies(5, Torque.parse(p[1] + " N.m"))))
        .toList();
  }

  /** A calibration on the day it is at the bench. */
  private static void calibrate(Bench bench, List<Tried> found) {
    bench.person(
        new CalibrateWrench(
            "TW-1",
            "C-26-140",
            "calibration room",
            bench.now().truncatedTo(ChronoUnit.DAYS),
            Optional.empty(),
            Optional.empty(),
            0,
            new Digits("1.0"),
            found,
            points("20:20", "60:60", "100:100"),
            Optional.empty()));
  }

  @Test
  void aCalibrationThatFindsItOutOfToleranceIsACautionOnTheWorkBefore() {
    Bench bench = worked();
    assertThat(found(bench)).isEmpty();
    bench.rest(86_400 * 5);
    calibrate(bench, points("20:19", "60:57", "100:95"));

    List<OutOfTolerance> found = found(bench);

    assertThat(found)
        .containsExactly(
            new OutOfTolerance(
                "TW-1", bench.size() - 1, "certificate C-26-140, calibrated 2026-11-30", 2, 2));
    assertThat(Remarks.caution(found.get(0)))
        .startsWith(
            "TW-1 was found out of tolerance after this: certificate C-26-140, calibrated 2026-11-30"
                + " (entry "
                + (bench.size() - 1)
                + "). Since its last good calibration before it took 2 readings of this job, and 2"
                + " passes stand by one of them");
    assertThat(RecordText.of(record(bench)))
        .anyMatch(l -> l.startsWith("  CAUTION: TW-1 was found out of tolerance after this"));
  }

  @Test
  void aCalibrationThatFindsItGoodIsNone() {
    Bench bench = worked();
    bench.rest(86_400 * 5);
    calibrate(bench, points("20:20", "60:60.5", "100:100"));
    assertThat(found(bench)).isEmpty();
  }

  @Test
  void aCheckThatFailedIsACautionOnTheWorkBeforeItAndNotAfterIt() {
    Bench bench = Bench.on(Bench.group(3));
    bench.hit("50 N.m");
    bench.person(new CheckWrench("TW-1", "tester-1", points("60:52"), "badge-07"));
    long check = bench.size() - 1;
    assertThat(bench.log().get((int) check)).isInstanceOf(Entry.CalibrationEnded.class);
    bench.hit("51 N.m");

    assertThat(found(bench))
        .containsExactly(
            new OutOfTolerance(
                "TW-1", check, "a check that failed, checked on tester-1, 2026-11-25", 1, 1));
  }

  @Test
  void whatWasDoneUnderAGoodCalibrationSinceIsNotInQuestion() {
    Bench bench = worked();
    bench.rest(86_400 * 2);
    calibrate(bench, points("20:20", "60:60", "100:100"));
    bench.rest(86_400 * 2);
    calibrate(bench, points("20:19", "60:57", "100:95"));
    assertThat(found(bench)).as("found wrong after a good calibration after the job").isEmpty();
  }

  @Test
  void whatWasDoneOnTheDayOfTheCalibrationButAfterItIsNotInQuestion() {
    Bench bench = Bench.on(Bench.group(3));
    calibrate(bench, points("20:19", "60:57", "100:95"));
    bench.hit("50 N.m");
    assertThat(found(bench)).isEmpty();
  }

  /** Whatever the history, no unit that a recall names is without the caution. */
  @Test
  void everyUnitThatARecallListsCarriesTheCaution() {
    int seen = 0;
    for (int seed = 1; seed <= 60; seed++) {
      Bench bench = Histories.of(new Random(seed));
      Shelf shelf = new Shelf(directory.resolve("history" + seed), bench.log());
      try (SqliteReading reading = SqliteReading.open(shelf.files())) {
        Survey survey = new Survey(reading, "TW-1");
        Finding finding = survey.finding(OptionalLong.empty()).orElseThrow();
        Entry entry = bench.log().get((int) finding.entry());
        if (((Entry.WrenchCalibrated) entry).foundWithin().orElse(true)) {
          continue;
        }
        for (Rejudged joint : survey.recall(finding).joints()) {
          UnitRecord unit = UnitRecord.of(Gather.read(shelf.unit(joint.touch().unit())));
          assertThat(unit.foundLater())
              .as("seed %s, unit %s", seed, joint.touch().unit())
              .extracting(OutOfTolerance::entry)
              .contains(finding.entry());
          seen++;
        }
      }
    }
    assertThat(seen).isGreaterThan(100);
  }
}
