package witnessmark.sight;

import java.util.Locale;

/** What the record shows of a mistake; the weaker, the later in the list. */
public enum Visibility {
  /** It is flagged, or what was pulled is credited where it was. */
  SEEN,
  /** A person is asked, and the job cannot close before the answer. */
  ASKED,
  /** It may leave no trace. */
  NOT_SEEN;

  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  Visibility weaker(Visibility other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
