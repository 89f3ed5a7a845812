package wrenchsim.wire;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** RFC 3339 in UTC with milliseconds, always three digits of them. */
public final class WireTime {
  private static final DateTimeFormatter FORM =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

  private WireTime() {}

  /** The text of a moment, cut to its millisecond. */
  public static String text(Instant moment) {
    return FORM.format(moment);
  }
}
