package witnessmark.cli;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** Moments as people give them: a day in UTC, or a time with its offset. */
final class Day {
  /** The last moment that a text of four digits for the year can tell. */
  private static final Instant LAST = Instant.parse("9999-12-31T23:59:59.999Z");

  private static final Instant FIRST = Instant.parse("0001-01-01T00:00:00Z");

  private Day() {}

  /** The time, or the day's beginning. */
  static Instant begin(String text) {
    return moment(text, 0);
  }

  /** The time, or the day's end. */
  static Instant end(String text) {
    return moment(text, 1);
  }

  /** Moments are compared as texts, which sort only while all years have four digits. */
  private static Instant within(Instant moment) {
    return moment.isAfter(LAST) ? LAST : moment.isBefore(FIRST) ? FIRST : moment;
  }

  private static Instant moment(String text, int days) {
    try {
      return within(LocalDate.parse(text).plusDays(days).atStartOfDay(ZoneOffset.UTC).toInstant());
    } catch (DateTimeException e) {
      try {
        return within(OffsetDateTime.parse(text).toInstant());
      } catch (DateTimeException f) {
        throw new IllegalArgumentException(
            "\"" + text + "\" is no date or time; write 2026-11-25 or 2026-11-25T08:00:00+01:00");
      }
    }
  }
}
