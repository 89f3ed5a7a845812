package witnessmark.decode;

import com.google.re2j.Pattern;
import java.util.Locale;
import java.util.Optional;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;

/** Reads the table {@code [checksum]} of a profile. */
final class ChecksumSection {
  private static final String GROUPS =
      "write a pattern with the groups (?P<over>...), the bytes summed, and (?P<sum>...), the"
          + " hexadecimal digits";

  private ChecksumSection() {}

  static Optional<Checksum> read(Section checksum) {
    Optional<String> name =
        checksum.requiredText("kind", "allowed are " + String.join(", ", ChecksumKind.codes()));
    Optional<ChecksumKind> kind = name.flatMap(n -> kind(checksum, n));
    Optional<Pattern> pattern = checksum.requiredRead("pattern", GROUPS, ProfilePattern::compile);
    checksum.finish();
    return pattern.flatMap(
        p ->
            checksum.attempt(
                "pattern", GROUPS, () -> new Checksum(kind.orElse(ChecksumKind.XOR8), p)));
  }

  private static Optional<ChecksumKind> kind(Section checksum, String name) {
    if (!ChecksumKind.codes().contains(name)) {
      checksum.fault(
          "kind", "unknown checksum \"" + name + "\"", Nearest.hint(name, ChecksumKind.codes()));
      return Optional.empty();
    }
    return Optional.of(ChecksumKind.valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_')));
  }
}
