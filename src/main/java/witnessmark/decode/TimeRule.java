package witnessmark.decode;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * How a wrench writes its clock.
 *
 * @param formatter reads a date, a time, and an offset or zone unless {@code zone} is given
 * @param zone where the clock stands, where the text does not say
 */
public record TimeRule(DateTimeFormatter formatter, Optional<ZoneId> zone) {
  private static final ZonedDateTime PROBE =
      ZonedDateTime.of(2026, 11, 25, 10, 2, 3, 120_000_000, ZoneOffset.UTC);

  public TimeRule {
    Objects.requireNonNull(formatter, "formatter");
    Objects.requireNonNull(zone, "zone");
  }

  /**
   * The rule for a pattern of {@link DateTimeFormatter}; names of months and days are English.
   *
   * @throws IllegalArgumentException when it is no pattern, gives no full date and time, or its
   *     zone is missing or given twice
   */
  public static TimeRule of(String format, Optional<ZoneId> zone) {
    // Strict, so that 31.02. is refused instead of moved; then "yyyy" needs an era.
    DateTimeFormatter formatter =
        new DateTimeFormatterBuilder()
            .parseCaseInsensitive()
            .appendPattern(format)
            .parseDefaulting(ChronoField.ERA, 1)
            .toFormatter(Locale.ENGLISH)
            .withResolverStyle(ResolverStyle.STRICT);
    TemporalAccessor probe = probe(format, formatter);
    if (probe.query(TemporalQueries.localDate()) == null
        || probe.query(TemporalQueries.localTime()) == null) {
      throw new IllegalArgumentException("\"" + format + "\" gives no full date and time");
    }
    boolean zoned = probe.query(TemporalQueries.zone()) != null;
    if (!zoned && zone.isEmpty()) {
      throw new IllegalArgumentException("\"" + format + "\" has no offset and there is no zone");
    }
    if (zoned && zone.isPresent()) {
      throw new IllegalArgumentException(
          "\"" + format + "\" has an offset, and there is a zone too");
    }
    return new TimeRule(formatter, zone);
  }

  private static TemporalAccessor probe(String format, DateTimeFormatter formatter) {
    try {
      return formatter.parse(formatter.format(PROBE));
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"" + format + "\" cannot be read back from what it writes");
    }
  }

  Instant read(String text) throws Refusal {
    TemporalAccessor parsed = parse(text);
    LocalDate date = parsed.query(TemporalQueries.localDate());
    LocalTime time = parsed.query(TemporalQueries.localTime());
    ZoneId where = Optional.ofNullable(parsed.query(TemporalQueries.zone())).or(() -> zone).get();
    LocalDateTime local = LocalDateTime.of(date, time);
    List<ZoneOffset> offsets =
        parsed.isSupported(ChronoField.OFFSET_SECONDS)
            ? List.of(ZoneOffset.ofTotalSeconds(parsed.get(ChronoField.OFFSET_SECONDS)))
            : where.getRules().getValidOffsets(local);
    // A clock that was put forward or back makes no or two moments of one text.
    if (offsets.size() != 1) {
      throw new Refusal(
          "time "
              + Reason.shown(text)
              + (offsets.isEmpty() ? " never was in " : " was twice in ")
              + where
              + ", where the clocks changed; a time with its offset would tell");
    }
    return Rfc3339.inYears(text, local.toInstant(offsets.get(0)));
  }

  private TemporalAccessor parse(String text) throws Refusal {
    if (text.length() <= 128) {
      try {
        return formatter.parse(text);
      } catch (DateTimeException | ArithmeticException e) {
        // Refused below: the exception's text would quote the input unbounded.
      }
    }
    throw new Refusal(
        "time "
            + Reason.shown(text)
            + " is not written like "
            + Reason.shown(formatter.format(PROBE))
            + ", or does not exist");
  }
}
