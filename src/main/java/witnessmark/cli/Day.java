package witnessmark.cli;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** Moments as people give them: a day in UTC, or a time with its offset. */
final class Day {
  private Day() {}

  /** The time, or the day's beginning. */
  static Instant begin(String text) {
    return moment(text, 0);
  }

  /** The time, or the day's end. */
  static Instant end(String text) {
    return moment(text, 1);
  }

  private static Instant moment(String text, int days) {
    try {
      return LocalDate.parse(text).plusDays(days).atStartOfDay(ZoneOffset.UTC).toInstant();
    } catch (DateTimeException e) {
      try {
        return OffsetDateTime.parse(text).toInstant();
      } catch (DateTimeException f) {
        throw new IllegalArgumentException(
            "\"" + text + "\" is no date or time; write 2026-11-25 or 2026-11-25T08:00:00+01:00");
      }
    }
  }
}
