package witnessmark.decode;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a moment written as RFC 3339 date-time, offset included; letters in either case. */
final class Rfc3339 {
  private static final Pattern FORM =
      Pattern.compile(
          "([0-9]{4})-([0-9]{2})-([0-9]{2})[Tt]([0-9]{2}):([0-9]{2}):([0-9]{2})"
              + "(?:\\.([0-9]{1,9}))?(?:[Zz]|([+-])([0-9]{2}):([0-9]{2}))");

  private Rfc3339() {}

  static Instant read(String text) throws Refusal {
    Matcher m = FORM.matcher(text);
    if (!m.matches()) {
      throw new Refusal(
          "time "
              + Reason.shown(text)
              + " is not RFC 3339 with offset; allowed are forms like 2026-11-25T10:02:03.120Z or"
              + " 2026-11-25T11:02:03+01:00, with at most 9 digits after the point");
    }
    if (m.group(6).equals("60")) {
      throw new Refusal(
          "time "
              + Reason.shown(text)
              + " is a leap second, which has no place on the bridge's clock; seconds 00 to 59 are"
              + " allowed");
    }
    return inYears(text, moment(text, m));
  }

  private static Instant moment(String text, Matcher m) throws Refusal {
    try {
      LocalDateTime local =
          LocalDateTime.of(
              number(m, 1), number(m, 2), number(m, 3), number(m, 4), number(m, 5), number(m, 6));
      int nanos =
          m.group(7) == null ? 0 : Integer.parseInt((m.group(7) + "00000000").substring(0, 9));
      return local.withNano(nanos).toInstant(ZoneOffset.UTC).minusSeconds(offset(m));
    } catch (DateTimeException e) {
      throw noSuchMoment(text);
    }
  }

  private static int offset(Matcher m) {
    if (m.group(8) == null) {
      return 0;
    }
    int hours = number(m, 9);
    int minutes = number(m, 10);
    if (hours > 23 || minutes > 59) {
      throw new DateTimeException("offset");
    }
    return (m.group(8).equals("-") ? -60 : 60) * (60 * hours + minutes);
  }

  private static int number(Matcher m, int group) {
    return Integer.parseInt(m.group(group));
  }

  static Refusal noSuchMoment(String text) {
    return new Refusal(
        "time "
            + Reason.shown(text)
            + " does not exist; a date and time of the calendar is allowed");
  }

  /** The moment, when its UTC year is 0 to 9999, so that it can be written as RFC 3339 again. */
  static Instant inYears(String text, Instant moment) throws Refusal {
    if (moment.isBefore(Instant.parse("0000-01-01T00:00:00Z"))
        || !moment.isBefore(Instant.parse("+10000-01-01T00:00:00Z"))) {
      throw new Refusal(
          "time "
              + Reason.shown(text)
              + " is out of range; the years 0000 to 9999 UTC are allowed");
    }
    return moment;
  }
}
