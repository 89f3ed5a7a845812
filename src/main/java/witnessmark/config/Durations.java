package witnessmark.config;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a length of time such as {@code "10 s"}. */
final class Durations {
  static final String ALLOWED = "write a number and ms or s, e.g. \"10 s\", up to 3600 s";
  private static final Pattern FORM = Pattern.compile("([0-9]{1,7}) (ms|s)");

  static final String LONG = "write a number and s, min or h, e.g. \"24 h\", 1 s to 744 h";
  private static final Pattern LONG_FORM = Pattern.compile("([0-9]{1,7}) (s|min|h)");
  private static final Duration LONGEST = Duration.ofHours(744);

  private Durations() {}

  static Duration parse(String text) {
    Matcher m = FORM.matcher(text);
    Duration found = Duration.ZERO;
    if (m.matches()) {
      long n = Long.parseLong(m.group(1));
      found = m.group(2).equals("s") ? Duration.ofSeconds(n) : Duration.ofMillis(n);
    }
    if (found.isZero() || found.compareTo(Duration.ofHours(1)) > 0) {
      throw new IllegalArgumentException("\"" + text + "\" is no length of time");
    }
    return found;
  }

  static Duration parseLong(String text) {
    Matcher m = LONG_FORM.matcher(text);
    Duration found = Duration.ZERO;
    if (m.matches()) {
      long n = Long.parseLong(m.group(1));
      found =
          switch (m.group(2)) {
            case "s" -> Duration.ofSeconds(n);
            case "min" -> Duration.ofMinutes(n);
            default -> Duration.ofHours(n);
          };
    }
    if (found.isZero() || found.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("\"" + text + "\" is no length of time");
    }
    return found;
  }
}
