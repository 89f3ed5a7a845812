package witnessmark.decode;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;
import witnessmark.toml.Section;

/** Reads the table {@code [time]} of a profile. */
final class TimeSection {
  private static final String FORMAT =
      "write a pattern of date, time and offset like \"dd.MM.yyyy HH:mm:ssXXX\", or one without"
          + " offset and a zone";

  private TimeSection() {}

  static Optional<TimeRule> read(Section time) {
    boolean zoneWanted = time.has("zone");
    Optional<ZoneId> zone =
        time.read("zone", "write a zone like \"Europe/Zurich\" or \"+01:00\"", TimeSection::zone);
    Optional<String> format = time.requiredText("format", FORMAT);
    time.finish();
    if (zoneWanted && zone.isEmpty()) {
      return Optional.empty();
    }
    return format.flatMap(f -> time.attempt("format", FORMAT, () -> TimeRule.of(f, zone)));
  }

  private static ZoneId zone(String name) {
    try {
      return ZoneId.of(name);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException("unknown zone \"" + name + "\"", e);
    }
  }
}
