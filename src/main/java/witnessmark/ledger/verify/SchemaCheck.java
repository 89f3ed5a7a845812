package witnessmark.ledger.verify;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Compares what the database file is made of with what the format publishes. A view or trigger that
 * is in no log could show commands other rows than those that are verified.
 */
final class SchemaCheck {
  /** Of an own name, so that it is not taken for a row of that table. */
  private static final String PLACE = "schema";

  private static final int SHOWN = 80;

  private final Findings findings;
  private final Map<String, String> expected = new LinkedHashMap<>();
  private boolean tables = true;

  private SchemaCheck(Findings findings) {
    this.findings = findings;
    Schema.STATEMENTS.forEach(s -> expected.put(Schema.name(s), s));
  }

  /**
   * Names every object that is missing, extra or made otherwise.
   *
   * @return whether what bears a table's name is a table, so that its rows are what is stored
   */
  static boolean tables(RawLedger ledger, Findings findings) {
    SchemaCheck check = new SchemaCheck(findings);
    try (Rows rows = ledger.schema()) {
      while (rows.next()) {
        check.object(rows.value(0), rows.value(1), rows.value(2), rows.value(3));
      }
      check.expected.keySet().forEach(check::missing);
    } catch (IOException e) {
      check.add("cannot be read: " + e.getMessage());
    }
    return check.tables;
  }

  private void object(Object type, Object name, Object table, Object sql) {
    String which = text(type) + " " + text(name);
    String statement = expected.remove(which);
    if (statement == null) {
      add(cut(which) + " is extra: no log has it, and it may change what is shown or appended");
    } else if (!made(statement, text(name), plain(text(sql)))) {
      add(which + " is not made as the format says" + from(statement, plain(text(sql))));
    } else if (!on(statement, text(table))) {
      add(which + " is said to be of the table " + Cells.show(table));
    } else {
      return;
    }
    if (!text(type).equals("index") && !text(type).equals("trigger") && !rows(text(sql))) {
      tables = false;
    }
  }

  /** Whether it holds rows of its own, by the statement that makes it. */
  private static boolean rows(String sql) {
    return sql.toUpperCase(Locale.ROOT).startsWith("CREATE TABLE ");
  }

  private static boolean made(String statement, String name, String plain) {
    return plain.equals(statement) || Schema.EARLIER.getOrDefault(name, Set.of()).contains(plain);
  }

  private static String plain(String sql) {
    return sql.strip().replaceAll("\\s+", " ");
  }

  /** Where what was found parts from what was expected. */
  private static String from(String statement, String found) {
    int at = 0;
    while (at < Math.min(statement.length(), found.length())
        && statement.charAt(at) == found.charAt(at)) {
      at++;
    }
    int word = at == 0 ? 0 : statement.lastIndexOf(' ', at - 1) + 1;
    return ": from character "
        + word
        + " on expected "
        + Cells.show(statement.substring(word))
        + ", found "
        + Cells.show(found.substring(Math.min(word, found.length())));
  }

  private static String cut(String which) {
    return which.length() > SHOWN ? which.substring(0, SHOWN) + '…' : which;
  }

  /** Whether it belongs to the table that its statement names. */
  private static boolean on(String statement, String table) {
    String[] words = statement.split(" ");
    if (words[1].equals("TABLE")) {
      return words[2].equals(table);
    }
    for (int i = 3; i < words.length; i++) {
      if (words[i].equals("ON")) {
        return words[i + 1].equals(table);
      }
    }
    throw new IllegalStateException("no table in " + statement);
  }

  private void missing(String which) {
    add(which + " is missing");
  }

  private static String text(Object cell) {
    return cell instanceof String text ? text : Cells.show(cell);
  }

  private void add(String sentence) {
    findings.add(Findings.Subject.FILE, Place.table(PLACE), sentence);
  }
}
