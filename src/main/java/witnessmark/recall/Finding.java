package witnessmark.recall;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Entry;

/**
 * How a wrench was found, and since when that is in question.
 *
 * @param entry that says how it was found: a calibration, or a check that failed
 * @param told the certificate or the check in a few words
 * @param to end of the time in question, not included
 * @param points as found
 * @param good the entry of the last good calibration before
 * @param goodTold its certificate in a few words
 * @param from the good calibration's day
 * @param left as the good calibration left it; empty where that is not on record
 */
public record Finding(
    long entry,
    String told,
    Instant to,
    List<CalibrationPoint> points,
    long good,
    String goodTold,
    Instant from,
    List<CalibrationPoint> left) {
  private record Good(long n, String told, Instant from, List<CalibrationPoint> left) {}

  private record Found(
      long n, String told, Instant from, Instant to, List<CalibrationPoint> points) {}

  /**
   * The newest finding about a wrench that has a good calibration before it, or that of an entry.
   *
   * @param entries about the wrench, by number
   * @param asked the entry asked for
   */
  public static Optional<Finding> of(SortedMap<Long, Entry> entries, OptionalLong asked) {
    return entries.entrySet().stream()
        .filter(e -> asked.isEmpty() || asked.getAsLong() == e.getKey())
        .flatMap(e -> found(e.getKey(), e.getValue()).stream())
        .flatMap(f -> good(entries, f).map(g -> joined(f, g)).stream())
        .max(Comparator.comparing(Finding::to).thenComparing(Finding::entry));
  }

  /** The time in question, with the readings that the wrench took in it. */
  public Span span(long readings) {
    return new Span(
        from,
        to,
        readings,
        left.isEmpty() ? ErrorCurve.NONE : ErrorCurve.of(left),
        ErrorCurve.of(points));
  }

  private static Finding joined(Found found, Good good) {
    return new Finding(
        found.n(),
        found.told(),
        found.to(),
        found.points(),
        good.n(),
        good.told(),
        good.from(),
        good.left());
  }

  private static Optional<Found> found(long n, Entry entry) {
    if (entry instanceof Entry.WrenchCalibrated c && !c.found().isEmpty()) {
      Instant end = c.calibrated().plus(Duration.ofDays(1));
      return Optional.of(
          new Found(n, "certificate " + c.certificate(), c.calibrated(), end, c.found()));
    } else if (entry instanceof Entry.WrenchChecked c && !c.within()) {
      return Optional.of(
          new Found(n, "check on " + c.tester(), c.at(), c.at().plusMillis(1), c.points()));
    }
    return Optional.empty();
  }

  private static Optional<Good> good(SortedMap<Long, Entry> entries, Found found) {
    return good(entries, found.n(), found.from());
  }

  private static Optional<Good> good(SortedMap<Long, Entry> entries, long n, Instant found) {
    return entries.headMap(n).entrySet().stream()
        .flatMap(e -> good(e.getKey(), e.getValue()).stream())
        .filter(g -> g.from().isBefore(found))
        .max(Comparator.comparing(Good::from).thenComparing(Good::n));
  }

  /**
   * The day of the last good calibration before a wrench was found wrong.
   *
   * @param entries about the wrench, by number
   * @param n the entry that says how it was found
   * @param found when it was found
   */
  public static Optional<Instant> lastGood(SortedMap<Long, Entry> entries, long n, Instant found) {
    return good(entries, n, found).map(Good::from);
  }

  private static Optional<Good> good(long n, Entry entry) {
    if (entry instanceof Entry.WrenchCalibrated c && c.leftWithin()) {
      return Optional.of(new Good(n, "certificate " + c.certificate(), c.calibrated(), c.left()));
    } else if (entry instanceof Entry.WrenchEnrolled e) {
      String told = e.certificate().map(c -> "certificate " + c).orElse("no certificate number");
      return Optional.of(new Good(n, told, e.calibrated(), List.of()));
    }
    return Optional.empty();
  }
}
