package witnessmark.entry;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoUnit;

/** Moments as the log writes them: RFC 3339, UTC, at least three digits of a second. */
public final class Moments {
  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private static final long YEAR_1000 = LocalDate.of(1000, 1, 1).toEpochDay() * 86_400L;
  private static final long YEAR_10000 = LocalDate.of(10_000, 1, 1).toEpochDay() * 86_400L;

  private Moments() {}

  /** Now, to the millisecond, so that all moments of one log sort as texts, too. */
  public static Instant now() {
    return Clock.systemUTC().instant().truncatedTo(ChronoUnit.MILLIS);
  }

  public static String text(Instant moment) {
    if (moment.getNano() % 1_000_000 != 0) {
      return moment.toString();
    }
    long second = moment.getEpochSecond();
    return second >= YEAR_1000 && second < YEAR_10000
        ? digits(second, moment.getNano() / 1_000_000)
        : MILLIS.format(moment);
  }

  /** What the formatter gives for a year of four digits: every line of a report has one. */
  private static String digits(long second, int milli) {
    LocalDate day = LocalDate.ofEpochDay(Math.floorDiv(second, 86_400L));
    int rest = Math.floorMod(second, 86_400);
    StringBuilder text = new StringBuilder(24).append(day.getYear());
    two(text.append('-'), day.getMonthValue());
    two(text.append('-'), day.getDayOfMonth());
    two(text.append('T'), rest / 3600);
    two(text.append(':'), rest / 60 % 60);
    two(text.append(':'), rest % 60);
    text.append('.').append((char) ('0' + milli / 100));
    return two(text, milli % 100).append('Z').toString();
  }

  private static StringBuilder two(StringBuilder text, int number) {
    return text.append((char) ('0' + number / 10)).append((char) ('0' + number % 10));
  }

  /**
   * The moment that such a text states.
   *
   * @throws java.time.format.DateTimeParseException when it states none
   */
  public static Instant parse(String text) {
    // what text() writes of milliseconds, without a formatter: every entry that is read has two
    if (text.length() == 24
        && text.charAt(4) == '-'
        && text.charAt(7) == '-'
        && text.charAt(10) == 'T'
        && text.charAt(13) == ':'
        && text.charAt(16) == ':'
        && text.charAt(19) == '.'
        && text.charAt(23) == 'Z') {
      int year = number(text, 0, 4);
      int month = number(text, 5, 7);
      int day = number(text, 8, 10);
      int hour = number(text, 11, 13);
      int minute = number(text, 14, 16);
      int second = number(text, 17, 19);
      int milli = number(text, 20, 23);
      boolean digits = year >= 0 && (month | day | hour | minute | second | milli) >= 0;
      if (digits
          && month >= 1
          && month <= 12
          && day >= 1
          && day <= 28
          && hour < 24
          && minute < 60
          && second < 60) {
        long days = LocalDate.of(year, month, day).toEpochDay();
        long seconds = ((days * 24 + hour) * 60 + minute) * 60 + second;
        return Instant.ofEpochSecond(seconds, milli * 1_000_000L);
      }
    }
    return Instant.parse(text);
  }

  /** The number that those digits are; negative where one is none. */
  private static int number(String text, int from, int to) {
    int value = 0;
    for (int i = from; i < to; i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      value = 10 * value + digit;
    }
    return value;
  }
}
