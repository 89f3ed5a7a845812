package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.ledger.sqlite.RawReader;

/** Any one byte of what a ledger stores, changed at random. */
class RandomEditTest extends LedgerTest {
  private static final int SIZE = 300;
  private static final int EDITS = 300;
  private static final long SEED = 20261125;

  /** One stored value: its table and column, and the row that holds it. */
  private record Value(String table, String column, long rowid) {
    String at(String what) {
      return "SELECT " + what.replace("?", column) + " FROM " + table + " WHERE rowid = " + rowid;
    }
  }

  @Test
  void everyChangedByteOfAStoredValueIsFound() throws Exception {
    LedgerFile ledger = ledger(SIZE);
    Random random = new Random(SEED);
    List<Value> others = new ArrayList<>();
    values(ledger, others, "tile", "level", "idx", "hash");
    values(ledger, others, "job", "job", "unit", "station", "status", "opened", "ended");
    values(ledger, others, "trace", "n", "kind", "at", "scope", "job", "number", "fingerprint");
    for (int edit = 0; edit < EDITS; edit++) {
      long n = random.nextInt(SIZE);
      Value value =
          switch (random.nextInt(6)) {
            case 0, 1 -> new Value("entry", "bytes", n);
            case 2 -> new Value("entry", "link", n);
            case 3 -> new Value("checkpoint", "note", 0);
            default -> others.get(random.nextInt(others.size()));
          };
      String told = "seed " + SEED + ", edit " + edit + " of " + value;
      Object before = ledger.read(value.at("CAST(? AS BLOB)"));
      Object type = ledger.read(value.at("typeof(?)"));
      change(ledger, value, type, before, random);
      Report report = verify(ledger);
      assertThat(report.verifies()).as(told).isFalse();
      if (value.table.equals("entry")) {
        namesExactly(report, n, told);
      } else {
        assertThat(report.findings())
            .as(told)
            .anyMatch(f -> f.place() instanceof Place.Row row && row.table().equals(value.table));
      }
      restore(ledger, value, type, before);
    }
    assertThat(verify(ledger).findings()).as("all edits undone").isEmpty();
  }

  private static void values(LedgerFile ledger, List<Value> into, String table, String... columns)
      throws SQLException {
    try (Connection db = ledger.connect();
        Statement s = db.createStatement();
        var rows = s.executeQuery("SELECT rowid FROM " + table)) {
      while (rows.next()) {
        for (String column : columns) {
          into.add(new Value(table, column, rows.getLong(1)));
        }
      }
    }
  }

  private static void change(
      LedgerFile ledger, Value value, Object type, Object before, Random random)
      throws SQLException {
    if (before == null) {
      ledger.tamper(update(value, "?"), "x");
    } else if (type.equals("integer")) {
      // A number nobody has, so that the row's own key may be changed, too.
      ledger.tamper(update(value, value.column + " + ?"), 100_000 + random.nextInt(1000));
    } else {
      byte[] changed = ((byte[]) before).clone();
      changed[random.nextInt(changed.length)] ^= (byte) (1 + random.nextInt(255));
      ledger.tamper(update(value, "CAST(? AS " + type + ")"), changed);
    }
  }

  private static void restore(LedgerFile ledger, Value value, Object type, Object before)
      throws SQLException {
    if (value.table.equals("trace") && value.column.equals("n")) {
      ledger.tamper("UPDATE trace SET n = ? WHERE n >= 100000", value.rowid);
    } else if (before == null) {
      ledger.tamper(update(value, "?"), before);
    } else {
      ledger.tamper(update(value, "CAST(CAST(? AS TEXT) AS " + type + ")"), before);
    }
  }

  private static String update(Value value, String to) {
    return "UPDATE "
        + value.table
        + " SET "
        + value.column
        + " = "
        + to
        + " WHERE rowid = "
        + value.rowid;
  }

  private static void namesExactly(Report report, long n, String told) {
    assertThat(
            report.findings().stream().map(Finding::place).filter(Place.Entries.class::isInstance))
        .as(told)
        .isNotEmpty()
        .allMatch(place -> place.equals(Place.entry(n)));
  }

  @Test
  void aFileWithAnyByteChangedIsRefusedOrFoundUnlessItHoldsTheSame() throws Exception {
    LedgerFile ledger = ledger(SIZE);
    byte[] file = Files.readAllBytes(ledger.file());
    String held = dump(ledger);
    Random random = new Random(SEED);
    int told = 0;
    for (int edit = 0; edit < 200; edit++) {
      byte[] changed = file.clone();
      int at = random.nextInt(edit < 50 ? 4096 : file.length);
      changed[at] ^= (byte) (1 + random.nextInt(255));
      Path copy = directory.resolve("copy-" + edit + ".db");
      Files.write(copy, changed);
      LedgerFile copied = new LedgerFile(copy);
      boolean clean = clean(copy, ledger.key().verifierKey());
      told += clean ? 0 : 1;
      if (clean) {
        assertThat(dump(copied)).as("seed %d, byte %d", SEED, at).isEqualTo(held);
      }
      try (Stream<Path> made = Files.list(directory)) {
        for (Path path : made.filter(p -> p.getFileName().toString().startsWith("copy")).toList()) {
          Files.delete(path);
        }
      }
    }
    assertThat(told).as("changes told").isGreaterThan(50);
  }

  /** False for a refusal, too; anything but an IOException with a text fails the test. */
  private static boolean clean(Path file, String key) {
    try (RawReader reader = RawReader.open(file)) {
      return Verifier.verify(new Loose(reader), key).verifies();
    } catch (IOException e) {
      assertThat(e.getMessage()).contains(file.toString()).contains("; ");
      return false;
    }
  }

  private static String dump(LedgerFile ledger) throws SQLException {
    StringBuilder all = new StringBuilder();
    try (Connection db = ledger.connect();
        Statement s = db.createStatement()) {
      for (String table : List.of("entry", "checkpoint", "tile", "trace", "job")) {
        try (var rows = s.executeQuery("SELECT * FROM " + table)) {
          int columns = rows.getMetaData().getColumnCount();
          while (rows.next()) {
            for (int i = 1; i <= columns; i++) {
              all.append(Arrays.toString(rows.getBytes(i))).append(' ');
            }
            all.append('\n');
          }
        }
      }
    }
    return all.toString();
  }
}
