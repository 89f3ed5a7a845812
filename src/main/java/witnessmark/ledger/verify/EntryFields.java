package witnessmark.ledger.verify;

import java.util.HashSet;
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

  /** The fields of an entry whose texts are read. */
  private static final Set<String> TEXTS =
      Set.of(
          "kind",
          "at",
          "job",
          "station",
          "fastener",
          "wrench",
          "operator",
          "by",
          "verdict",
          "effect",
          "fingerprint",
          "unit",
          "procedure",
          "revision");

  /** All names that mean something in an entry or its event. */
  static final Set<String> NAMES = with(TEXTS, "v", "event", "number");

  private static final Set<String> SHOP_KINDS =
      Set.of(
          "log-opened",
          Voucher.KIND,
          "operator-enrolled",
          "wrench-enrolled",
          "calibration-ruled",
          "wrench-calibrated",
          "calibration-ended",
          "procedure-released",
          "operator-at-station");

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

  /** Whether its texts are known to hold no control character. */
  boolean plain;

  private static Set<String> with(Set<String> names, String... more) {
    Set<String> all = new HashSet<>(names);
    all.addAll(Set.of(more));
    return all;
  }

  /** Whether a text of that name in the entry itself is read. */
  static boolean isText(String name) {
    return TEXTS.contains(name);
  }

  /** Whether a text of that name in the entry's event is read. */
  static boolean isEventText(String name) {
    return name.equals("wrench") || name.equals("operator");
  }

  /** Takes a text of the entry itself, of a name that is read. */
  void text(String name, String value) {
    switch (name) {
      case "kind" -> kind = value;
      case "at" -> at = value;
      case "job" -> job = value;
      case "station" -> station = value;
      case "fastener" -> fastener = value;
      case "wrench" -> wrench = value;
      case "operator" -> operator = value;
      case "by" -> by = value;
      case "verdict" -> verdict = value;
      case "effect" -> effect = value;
      case "fingerprint" -> fingerprint = value;
      case "unit" -> unit = value;
      case "procedure" -> procedure = value;
      case "revision" -> revision = value;
      default -> throw new IllegalArgumentException(name);
    }
  }

  /** Takes a text of the entry's event, of a name that is read. */
  void eventText(String name, String value) {
    switch (name) {
      case "wrench" -> eventWrench = value;
      case "operator" -> eventOperator = value;
      default -> throw new IllegalArgumentException(name);
    }
  }

  void clear() {
    plain = false;
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
   * Whether a row is what the entry gives, by its one text of {@link RawLedger#traces}.
   *
   * <p>U+001E stands before every field. Where no field of the entry holds one, an equal text has
   * just those, so none of the row's fields holds one either, and they are the same.
   */
  boolean traceIs(String row) {
    int next = 0;
    for (int i = 0; i < TRACE.length; i++) {
      Object value = trace(i);
      String lead = i == 0 ? "\u001e" : "\u001f\u001e";
      if (!row.startsWith(lead, next)) {
        return false;
      }
      next += lead.length();
      if (value != null) {
        String text = value.toString();
        boolean same = row.startsWith("\u001f", next) && row.startsWith(text, next + 1);
        if (!same || (!plain && text.indexOf('\u001e') >= 0)) {
          return false;
        }
        next += 1 + text.length();
      }
    }
    return next == row.length();
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
