package witnessmark.ledger.verify;

import java.util.Set;

/** The fields of one entry that rows of other tables follow from; null where it has none. */
final class EntryFields {
  /** The columns of {@code trace} after {@code n}, in their order. */
  static final String[] TRACE = {
    "kind",
    "at",
    "scope",
    "job",
    "station",
    "fastener",
    "wrench",
    "number",
    "operator",
    "verdict",
    "effect",
    "fingerprint"
  };

  private static final Set<String> SHOP_KINDS =
      Set.of(
          "log-opened",
          "operator-enrolled",
          "wrench-enrolled",
          "calibration-ruled",
          "wrench-calibrated",
          "calibration-ended",
          "procedure-released",
          "operator-at-station");

  private final StringBuilder text = new StringBuilder();

  String kind;
  String at;
  String job;
  String station;
  String fastener;
  String wrench;
  String eventWrench;
  Long eventNumber;
  String operator;
  String by;
  String eventOperator;
  String verdict;
  String effect;
  String fingerprint;
  String unit;
  String procedure;
  String revision;

  void clear() {
    kind = at = job = station = fastener = null;
    wrench = eventWrench = operator = by = eventOperator = null;
    eventNumber = null;
    verdict = effect = fingerprint = unit = procedure = revision = null;
  }

  /** What column {@code TRACE[index]} must hold. */
  Object trace(int index) {
    switch (index) {
      case 0:
        return kind;
      case 1:
        return at;
      case 2:
        return scope();
      case 3:
        return job;
      case 4:
        return station;
      case 5:
        return fastener;
      case 6:
        return first(eventWrench, wrench);
      case 7:
        return eventNumber;
      case 8:
        return first(eventOperator, first(by, operator));
      case 9:
        return verdict;
      case 10:
        return effect;
      case 11:
        return fingerprint;
      default:
        throw new IndexOutOfBoundsException(index);
    }
  }

  /**
   * The whole row as the one text of {@link RawLedger#traces}; null when a field holds a character
   * that the text uses between fields, so that two rows could look the same.
   */
  String traceText() {
    text.setLength(0);
    int controls = 0;
    for (int i = 0; i < TRACE.length; i++) {
      Object value = trace(i);
      text.append(value == null ? "\u001e" : value).append('\u001f');
      controls += value == null ? 2 : 1;
    }
    for (int i = 0; i < text.length(); i++) {
      controls -= text.charAt(i) < ' ' ? 1 : 0;
    }
    return controls == 0 ? text.toString() : null;
  }

  private String scope() {
    if (SHOP_KINDS.contains(kind) || ("scan".equals(kind) && procedure != null)) {
      return "shop";
    }
    return job == null ? "none" : "job";
  }

  private static String first(String one, String other) {
    return one != null ? one : other;
  }
}
