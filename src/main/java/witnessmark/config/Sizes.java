package witnessmark.config;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads an amount of storage such as {@code "200 MB"}; in bytes, by powers of ten. */
final class Sizes {
  static final String ALLOWED = "write a number and kB, MB or GB, e.g. \"200 MB\"";
  private static final Pattern FORM = Pattern.compile("([0-9]{1,6}) (kB|MB|GB)");
  private static final Map<String, Long> UNITS =
      Map.of("kB", 1_000L, "MB", 1_000_000L, "GB", 1_000_000_000L);

  private Sizes() {}

  static long parse(String text) {
    Matcher m = FORM.matcher(text);
    if (!m.matches()) {
      throw new IllegalArgumentException("\"" + text + "\" is no amount of storage");
    }
    return Long.parseLong(m.group(1)) * UNITS.get(m.group(2));
  }
}
