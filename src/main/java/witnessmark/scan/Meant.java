package witnessmark.scan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;

/**
 * What a code was taken for. The fields are those of the scan's entry.
 *
 * @param entries what follows the scan's entry on record
 */
public record Meant(
    Meaning meaning,
    Optional<String> job,
    Optional<String> fastener,
    Optional<String> procedure,
    OptionalLong question,
    String text,
    List<Entry> entries) {
  public Meant {
    entries = List.copyOf(entries);
  }

  /** The same code again so soon that it is one scan that came twice. */
  public static Meant repeated(String station) {
    return of(
        Meaning.REPEATED,
        "The same code came twice at "
            + station
            + " and was taken once. Scan it again if you mean it twice.");
  }

  static Meant of(Meaning meaning, String text) {
    return of(meaning, text, List.of());
  }

  static Meant of(Meaning meaning, String text, List<Entry> entries) {
    return new Meant(
        meaning,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalLong.empty(),
        text,
        entries);
  }

  Meant on(Optional<String> changed) {
    return new Meant(meaning, changed, fastener, procedure, question, text, entries);
  }

  Meant naming(String changed) {
    return new Meant(meaning, job, Optional.of(changed), procedure, question, text, entries);
  }

  Meant by(String changed) {
    return new Meant(meaning, job, fastener, Optional.of(changed), question, text, entries);
  }

  Meant about(long changed) {
    return new Meant(meaning, job, fastener, procedure, OptionalLong.of(changed), text, entries);
  }
}
