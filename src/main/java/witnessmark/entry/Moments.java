package witnessmark.entry;

import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoUnit;

/** Moments as the log writes them: RFC 3339, UTC, at least three digits of a second. */
public final class Moments {
  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private Moments() {}

  /** Now, to the millisecond, so that all moments of one log sort as texts, too. */
  public static Instant now() {
    return Clock.systemUTC().instant().truncatedTo(ChronoUnit.MILLIS);
  }

  public static String text(Instant moment) {
    return moment.getNano() % 1_000_000 == 0 ? MILLIS.format(moment) : moment.toString();
  }
}
