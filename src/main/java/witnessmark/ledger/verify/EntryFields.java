package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The fields of one entry that rows of other tables follow from; null where it has none.
 *
 * <p>Of an entry of the plain form only where each begins and ends is noted, so that a row that
 * fits is compared byte by byte and no text is made.
 */
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

  /** All names that mean something in an entry or its event. */
  static final Set<String> NAMES = names("v", "event", "number");

  private static final Set<String> SHOP_KINDS =
      Set.of(
          "log-opened",
          Voucher.KIND,
          "operator-enrolled",
          "operator-key-enrolled",
          "operator-key-withdrawn",
          "wrench-enrolled",
          "wrench-bound",
          "calibration-ruled",
          "wrench-calibrated",
          "calibration-ended",
          "procedure-released",
          "operator-at-station");

  private final String[] texts = new String[Field.COUNT];
  private final int[] from = new int[Field.COUNT];
  private final int[] to = new int[Field.COUNT];
  private byte[] bytes;
  private Long eventNumber;
  private int numberFrom;
  private int numberTo;

  /** The kind that was last made a text of a plain entry's bytes: most follow one of their own. */
  private byte[] lastKind = new byte[0];

  private String lastKindText = "";

  private static Set<String> names(String... more) {
    Set<String> all = new HashSet<>(List.of(more));
    Field.names().forEach(all::add);
    return all;
  }

  /** Forgets what an earlier entry had. */
  void clear() {
    Arrays.fill(texts, null);
    Arrays.fill(to, -1);
    bytes = null;
    eventNumber = null;
    numberTo = -1;
  }

  /** Takes a text. */
  void text(Field field, String value) {
    texts[field.ordinal()] = value;
  }

  /** Takes the number of the entry's event. */
  void eventNumber(Long value) {
    eventNumber = value;
  }

  /**
   * Forgets what an earlier entry had, to take texts from these bytes: ASCII without controls, so
   * that a byte is a character and none of them U+001E.
   */
  void clear(byte[] plain) {
    clear();
    bytes = plain;
  }

  /** Takes a text that stands in the plain bytes. */
  void text(Field field, int begin, int end) {
    from[field.ordinal()] = begin;
    to[field.ordinal()] = end;
  }

  /** Takes the number, which stands in the plain bytes as SQLite writes it as text. */
  void eventNumber(int begin, int end) {
    numberFrom = begin;
    numberTo = end;
  }

  /** The text of a field, null where the entry has none. */
  String text(Field field) {
    int i = field.ordinal();
    if (texts[i] == null && to[i] >= 0) {
      texts[i] = field == Field.KIND ? plainKind() : plain(from[i], to[i]);
    }
    return texts[i];
  }

  boolean has(Field field) {
    return texts[field.ordinal()] != null || to[field.ordinal()] >= 0;
  }

  private String plainKind() {
    int begin = from[Field.KIND.ordinal()];
    int end = to[Field.KIND.ordinal()];
    if (!Arrays.equals(bytes, begin, end, lastKind, 0, lastKind.length)) {
      lastKind = Arrays.copyOfRange(bytes, begin, end);
      lastKindText = plain(begin, end);
    }
    return lastKindText;
  }

  private String plain(int begin, int end) {
    return new String(bytes, begin, end - begin, StandardCharsets.ISO_8859_1);
  }

  /** What column {@code TRACE[index]} must hold. */
  Object trace(int index) {
    if (index == 2) {
      return scope();
    } else if (index == 7) {
      return numberTo >= 0 ? Long.valueOf(plain(numberFrom, numberTo)) : eventNumber;
    }
    Field field = column(index);
    return field == null ? null : text(field);
  }

  /** The field of the entry that a column of texts follows from, null where it has none. */
  private Field column(int index) {
    return switch (index) {
      case 0 -> present(Field.KIND);
      case 1 -> present(Field.AT);
      case 3 -> present(Field.JOB);
      case 4 -> present(Field.STATION);
      case 5 -> present(Field.FASTENER);
      case 6 -> has(Field.EVENT_WRENCH) ? Field.EVENT_WRENCH : present(Field.WRENCH);
      case 8 ->
          has(Field.EVENT_OPERATOR)
              ? Field.EVENT_OPERATOR
              : has(Field.BY) ? Field.BY : present(Field.OPERATOR);
      case 9 -> present(Field.VERDICT);
      case 10 -> present(Field.EFFECT);
      case 11 -> present(Field.FINGERPRINT);
      default -> throw new IndexOutOfBoundsException(index);
    };
  }

  private Field present(Field field) {
    return has(field) ? field : null;
  }

  /**
   * Whether a row is what the entry gives, by the bytes of its one value of {@link
   * RawLedger#traces}; false where that cannot be told from them.
   *
   * <p>U+001E stands before every field. Where no field of the entry holds one, equal bytes have
   * just those, so none of the row's fields holds one either, and they are the same.
   */
  boolean traceIs(byte[] row) {
    RowBytes rest = new RowBytes(row);
    for (int i = 0; i < TRACE.length; i++) {
      if ((i > 0 && !rest.next(RowBytes.BETWEEN)) || !rest.next(RowBytes.LEAD)) {
        return false;
      }
      if (i == 2 ? !rest.value(scope()) : i == 7 ? !number(rest) : !text(rest, column(i))) {
        return false;
      }
    }
    return rest.ended();
  }

  private boolean number(RowBytes rest) {
    if (numberTo >= 0) {
      return rest.value(bytes, numberFrom, numberTo);
    }
    return eventNumber == null || rest.value(eventNumber.toString());
  }

  private boolean text(RowBytes rest, Field field) {
    if (field == null) {
      return true;
    }
    int i = field.ordinal();
    return to[i] >= 0 ? rest.value(bytes, from[i], to[i]) : rest.value(texts[i]);
  }

  private String scope() {
    String kind = text(Field.KIND);
    if (SHOP_KINDS.contains(kind) || ("scan".equals(kind) && has(Field.PROCEDURE))) {
      return "shop";
    }
    return has(Field.JOB) ? "job" : "none";
  }
}
