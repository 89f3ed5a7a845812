package witnessmark.ledger.verify;

import com.fasterxml.jackson.core.JsonToken;
import java.util.Map;
import java.util.Set;

/**
 * The members that entries of a kind must have, after docs/entries.md and its schema. Of the
 * readings and scans, of which there are most, only those are asked for that rows follow from.
 */
final class Members {
  private static final String TEXTS = "text";

  /** By kind: the names of texts; after a colon another type. */
  private static final Map<String, String[]> REQUIRED =
      Map.ofEntries(
          kind("log-opened", "origin"),
          kind("log-key-changed", "from", "to", "voucher"),
          kind("operator-enrolled", "operator", "name"),
          kind("operator-key-enrolled", "operator", "publicKey", "by"),
          kind("operator-key-withdrawn", "operator", "by", "because"),
          kind("wrench-bound", "wrench", "by"),
          kind("wrench-enrolled", "wrench", "low", "high", "calibrated", "due"),
          kind("wrench-checked", "wrench", "tester", "points:array", "by"),
          kind("calibration-ended", "wrench", "from", "cause"),
          kind("procedure-released", "procedure", "revision", TEXTS),
          kind("operator-at-station", "station", "operator"),
          kind("job-opened", "job", "unit", "station", "procedure", "revision", "released:number"),
          kind("job-suspended", "job"),
          kind("job-resumed", "job", "station"),
          kind("job-closed", "job"),
          kind("job-abandoned", "job", "because"),
          kind("attested", "job", "step", "by"),
          kind("measured", "job", "step", "values:array", TEXTS, "by"),
          kind(
              "disposed",
              "job",
              "fastener",
              "nonconformity:number",
              "disposition",
              "by",
              "because"),
          kind("assigned", "job", "assigns:number", "by", "because"),
          kind("set-aside", "job", "sets:number", "by", "because"),
          kind("reread", "job", "rereads:number", "because:number"));

  private static final Map<String, Set<String>> WORDS =
      Map.of(
          "disposition",
          Set.of("rework", "replace", "use-as-is", "scrap"),
          "role",
          Set.of("technician", "second", "quality"),
          "cause",
          Set.of(
              "taken-out-of-use", "left-out-of-tolerance", "operations-used-up", "check-failed"));

  private Members() {}

  private static Map.Entry<String, String[]> kind(String kind, String... members) {
    return Map.entry(kind, members);
  }

  /** Whether entries of the kind are asked for members here. */
  static boolean concerns(String kind) {
    return REQUIRED.containsKey(kind);
  }

  /** What such an entry lacks; null when it lacks nothing. */
  static String fault(String kind, DecisionFields fields) {
    for (String member : REQUIRED.get(kind)) {
      int colon = member.indexOf(':');
      String name = colon < 0 ? member : member.substring(0, colon);
      String type = colon < 0 ? TEXTS : member.substring(colon + 1);
      if (fields.member(name) != token(type)) {
        return "has no " + type + " /" + name + ", as every " + kind + " has";
      }
    }
    for (Map.Entry<String, Set<String>> word : WORDS.entrySet()) {
      String name = word.getKey();
      boolean asked = name.equals("cause") ? kind.equals("calibration-ended") : disposed(kind);
      if (asked && fields.member(name) != null && !word.getValue().contains(fields.text(name))) {
        return "its /" + name + " is " + Cells.show(fields.text(name)) + ", which is no such word";
      }
    }
    return null;
  }

  private static boolean disposed(String kind) {
    return kind.equals("disposed");
  }

  private static JsonToken token(String type) {
    return switch (type) {
      case TEXTS -> JsonToken.VALUE_STRING;
      case "number" -> JsonToken.VALUE_NUMBER_INT;
      case "array" -> JsonToken.START_ARRAY;
      default -> throw new IllegalStateException("no token for " + type);
    };
  }

  /**
   * Whether it is a time in UTC after RFC 3339, section 5.6, as {@code 2026-11-25T10:00:00.000Z}.
   */
  static boolean moment(String at) {
    int end = at == null ? 0 : at.length() - 1;
    if (end < 19 || at.charAt(end) != 'Z' || end == 20) {
      return false;
    }
    for (int i = 0; i < end; i++) {
      char expected = i < 19 ? "0000-00-00T00:00:00".charAt(i) : i == 19 ? '.' : '0';
      char c = at.charAt(i);
      if (expected == '0' ? c < '0' || c > '9' : c != expected) {
        return false;
      }
    }
    return in(at, 5, 1, 12)
        && in(at, 8, 1, 31)
        && in(at, 11, 0, 23)
        && in(at, 14, 0, 59)
        && in(at, 17, 0, 60);
  }

  private static boolean in(String at, int from, int least, int most) {
    int number = (at.charAt(from) - '0') * 10 + at.charAt(from + 1) - '0';
    return least <= number && number <= most;
  }
}
