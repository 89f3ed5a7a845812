package witnessmark.ledger.verify;

import java.util.Objects;

/** Where in a ledger something is wrong. */
public sealed interface Place {
  /** A run of entries, both ends included; {@code first} is at most {@code last}. */
  record Entries(long first, long last) implements Place {
    public Entries {
      if (first > last) {
        throw new IllegalArgumentException("entries " + first + " to " + last + " run backwards");
      }
    }

    public boolean contains(long n) {
      return first <= n && n <= last;
    }

    @Override
    public String toString() {
      return first == last ? "entry " + first : "entries " + first + " to " + last;
    }
  }

  /** A row of a table that is not the log itself; {@code key} is empty for the table as a whole. */
  record Row(String table, String key) implements Place {
    public Row {
      Objects.requireNonNull(table, "table");
      Objects.requireNonNull(key, "key");
    }

    @Override
    public String toString() {
      return key.isEmpty() ? table : table + " " + key;
    }
  }

  static Place entry(long n) {
    return new Entries(n, n);
  }

  static Place entries(long first, long last) {
    return new Entries(first, last);
  }

  static Place table(String table) {
    return new Row(table, "");
  }

  static Place row(String table, Object key) {
    return new Row(table, String.valueOf(key));
  }
}
