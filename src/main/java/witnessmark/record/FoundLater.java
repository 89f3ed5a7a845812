package witnessmark.record;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import witnessmark.entry.CalibrationEnd;
import witnessmark.entry.Entry;
import witnessmark.recall.Finding;

/**
 * Which wrenches of a job were found out of tolerance after it had been worked on with them. The
 * time in question is that of a recall: since the last good calibration, up to the end of the day
 * of the calibration, or up to the check.
 */
final class FoundLater {
  private final SortedMap<Long, Entry> entries;
  private final List<Attempt> readings;

  FoundLater(SortedMap<Long, Entry> entries, List<Attempt> readings) {
    this.entries = entries;
    this.readings = readings;
  }

  /** By wrench, then by entry. */
  List<OutOfTolerance> all() {
    List<OutOfTolerance> all = new ArrayList<>();
    readings.stream()
        .map(a -> a.taken().event().wrench())
        .distinct()
        .sorted()
        .forEach(w -> all.addAll(of(w)));
    return all;
  }

  private List<OutOfTolerance> of(String wrench) {
    SortedMap<Long, Entry> about = new TreeMap<>(entries);
    about.values().removeIf(e -> !concerns(e, wrench));
    List<OutOfTolerance> found = new ArrayList<>();
    about.forEach(
        (n, entry) -> {
          Optional<Found> wrong = wrong(entry);
          wrong
              .map(w -> counted(wrench, n, w, Finding.lastGood(about, n, w.from())))
              .filter(o -> o.readings() > 0)
              .ifPresent(found::add);
        });
    return found;
  }

  private static boolean concerns(Entry entry, String wrench) {
    return entry instanceof Entry.WrenchEnrolled e && e.wrench().equals(wrench)
        || entry instanceof Entry.WrenchCalibrated c && c.wrench().equals(wrench)
        || entry instanceof Entry.CalibrationEnded d && d.wrench().equals(wrench);
  }

  /**
   * @param from the moment, or the beginning of the day, when it was found
   * @param to up to when it had been in use
   */
  private record Found(String told, Instant from, Instant to) {}

  private static Optional<Found> wrong(Entry entry) {
    if (entry instanceof Entry.WrenchCalibrated c) {
      boolean out = !c.foundWithin().orElse(c.leftWithin());
      String told =
          "certificate "
              + c.certificate()
              + ", calibrated "
              + c.calibrated().atZone(ZoneOffset.UTC).toLocalDate();
      return out
          ? Optional.of(new Found(told, c.calibrated(), c.calibrated().plus(Duration.ofDays(1))))
          : Optional.empty();
    } else if (entry instanceof Entry.CalibrationEnded d
        && d.cause() == CalibrationEnd.CHECK_FAILED) {
      String told =
          "a check that failed"
              + d.because().map(b -> ", " + b).orElse("")
              + ", "
              + d.from().atZone(ZoneOffset.UTC).toLocalDate();
      return Optional.of(new Found(told, d.from(), d.from()));
    }
    return Optional.empty();
  }

  private OutOfTolerance counted(String wrench, long n, Found found, Optional<Instant> good) {
    List<Attempt> in =
        readings.stream()
            .filter(a -> a.taken().event().wrench().equals(wrench))
            .filter(a -> a.taken().moment().isBefore(found.to()))
            .filter(a -> good.isEmpty() || !a.taken().moment().isBefore(good.get()))
            // what came after the finding and was not kept back was taken after it
            .filter(a -> a.entry() < n || a.taken().timing().tardy())
            .toList();
    return new OutOfTolerance(
        wrench, n, found.told(), in.size(), in.stream().filter(Attempt::stands).count());
  }
}
