package witnessmark.ledger.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Live;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;

/** Reads the log in an SQLite file. */
public final class SqliteReading implements Reading {
  private static final int CHUNK = 1000;

  private final Path file;
  private final Connection connection;
  private final Prepared prepared;
  private final Footing footing;
  private final Still still;
  private boolean atRest;

  private SqliteReading(Path file, Still still, Connection connection) {
    this.file = file;
    this.still = still;
    this.connection = connection;
    this.prepared = new Prepared(connection);
    this.footing = new Footing(file);
  }

  /** Opens the log for whoever stays and follows it; else as {@link #briefly}. */
  public static SqliteReading open(LedgerFiles files) {
    return open(files, Looking::open);
  }

  /**
   * Opens the log for a short look, also where nothing can be written, as far as that can be.
   *
   * @throws witnessmark.ledger.LedgerException when there is no log, or it cannot be read, or, at
   *     the close, when it was written to meanwhile and nothing kept the writer off
   */
  public static SqliteReading briefly(LedgerFiles files) {
    return open(files, Looking::briefly);
  }

  private static SqliteReading open(LedgerFiles files, Function<Path, Connection> how) {
    files.mustExist();
    Path file = files.database();
    Still still = new Still(file);
    Connection connection = how.apply(file);
    Database.check(connection, file);
    return new SqliteReading(file, still, connection);
  }

  @Override
  public long size() {
    return guarded(() -> Database.number(connection, "SELECT coalesce(max(n) + 1, 0) FROM entry"));
  }

  @Override
  public Live live() {
    return atOneMoment(() -> guarded(() -> LiveEntries.read(connection, size())));
  }

  @Override
  public <T> T atOneMoment(Supplier<T> look) {
    if (atRest) {
      return look.get();
    }
    guarded(() -> Database.execute(connection, "BEGIN"));
    atRest = true;
    try {
      return look.get();
    } finally {
      atRest = false;
      guarded(() -> Database.execute(connection, "COMMIT"));
    }
  }

  @Override
  public List<byte[]> tiles(int level, long index, int limit) {
    return guarded(() -> StoredTiles.read(connection, level, index, limit));
  }

  @Override
  public Optional<Stored> entry(long n) {
    return from(n, 1).stream().filter(s -> s.n() == n).findFirst();
  }

  @Override
  public List<Stored> from(long n, int limit) {
    footing.check();
    return guarded(
        () ->
            prepared.stored(
                "SELECT n, bytes FROM entry WHERE n >= ? ORDER BY n LIMIT ?", List.of(n, limit)));
  }

  @Override
  public void chunks(Query query, Consumer<List<Stored>> each) {
    Where where = Where.of(query);
    guarded(
        () -> {
          Range range = range(query);
          List<Stored> chunk;
          do {
            List<Object> values = new ArrayList<>(where.values());
            values.addAll(List.of(range.first(), range.last(), CHUNK));
            chunk =
                prepared.stored(
                    "SELECT e.n, e.bytes FROM trace t JOIN entry e ON e.n = t.n WHERE "
                        + where.sql()
                        + " AND t.n >= ? AND t.n <= ? ORDER BY t.n LIMIT ?",
                    values);
            if (!chunk.isEmpty()) {
              each.accept(chunk);
              range = new Range(chunk.get(chunk.size() - 1).n() + 1, range.last());
            }
          } while (chunk.size() == CHUNK);
          return null;
        });
  }

  /** The numbers among which a query's matches are. */
  private record Range(long first, long last) {}

  private Range range(Query query) throws SQLException {
    Optional<Where> period = Where.period(query);
    if (period.isEmpty()) {
      return new Range(0, Long.MAX_VALUE);
    }
    try (PreparedStatement asked = prepared(period.get().sql(), period.get().values());
        ResultSet rows = asked.executeQuery()) {
      rows.next();
      return rows.getObject(1) == null
          ? new Range(0, -1)
          : new Range(rows.getLong(1), rows.getLong(2));
    }
  }

  @Override
  public List<Stored> registers(List<String> kinds, long before) {
    List<Object> values = new ArrayList<>(kinds);
    values.add(before);
    return guarded(
        () ->
            prepared.stored(
                "SELECT e.n, e.bytes FROM trace t INDEXED BY trace_shop JOIN entry e ON e.n = t.n"
                    + " WHERE t.scope = 'shop' AND t.kind IN ("
                    + String.join(", ", Collections.nCopies(kinds.size(), "?"))
                    + ") AND t.n < ? ORDER BY t.n",
                values));
  }

  @Override
  public List<JobRow> jobs(Optional<String> unit, Optional<String> job, boolean unfinishedOnly) {
    List<Object> values = new ArrayList<>();
    StringBuilder sql = new StringBuilder("SELECT * FROM job WHERE 1 = 1");
    unit.ifPresent(u -> add(sql, values, " AND unit = ?", u));
    job.ifPresent(j -> add(sql, values, " AND job = ?", j));
    if (unfinishedOnly) {
      sql.append(" AND ended IS NULL");
    }
    sql.append(" ORDER BY opened");
    return guarded(
        () -> {
          List<JobRow> found = new ArrayList<>();
          try (PreparedStatement query = prepared(sql.toString(), values);
              ResultSet rows = query.executeQuery()) {
            while (rows.next()) {
              long ended = rows.getLong("ended");
              found.add(
                  new JobRow(
                      rows.getString("job"),
                      rows.getString("unit"),
                      rows.getString("procedure"),
                      rows.getString("revision"),
                      rows.getString("station"),
                      rows.getString("status"),
                      rows.getLong("opened"),
                      rows.getObject("ended") == null ? Optional.empty() : Optional.of(ended)));
            }
          }
          return found;
        });
  }

  @Override
  public List<String> stations() {
    return guarded(
        () -> {
          List<String> found = new ArrayList<>();
          try (PreparedStatement query =
                  connection.prepareStatement("SELECT DISTINCT station FROM job ORDER BY station");
              ResultSet rows = query.executeQuery()) {
            while (rows.next()) {
              found.add(rows.getString(1));
            }
          }
          return found;
        });
  }

  @Override
  public Optional<String> checkpoint() {
    return guarded(
        () -> {
          try (PreparedStatement query =
                  connection.prepareStatement("SELECT note FROM checkpoint");
              ResultSet rows = query.executeQuery()) {
            return rows.next() ? Optional.of(rows.getString(1)) : Optional.empty();
          }
        });
  }

  @Override
  public long cursor(String name) {
    return guarded(
        () -> {
          try (PreparedStatement query =
                  prepared("SELECT n FROM cursor WHERE name = ?", List.of(name));
              ResultSet rows = query.executeQuery()) {
            return rows.next() ? rows.getLong(1) : 0L;
          }
        });
  }

  @Override
  public void cursor(String name, long n) {
    guarded(
        () -> {
          try (PreparedStatement change =
              prepared(
                  "INSERT INTO cursor (name, n) VALUES (?, ?)"
                      + " ON CONFLICT (name) DO UPDATE SET n = excluded.n",
                  List.of(name, n))) {
            return change.executeUpdate();
          }
        });
  }

  @Override
  public void close() {
    if (!footing.lost()) { // else it would remove the WAL file of whatever took the log's place
      guarded(
          () -> {
            still.check(connection);
            connection.close();
          });
    }
  }

  private PreparedStatement prepared(String sql, List<Object> values) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int i = 0; i < values.size(); i++) {
      statement.setObject(i + 1, values.get(i));
    }
    return statement;
  }

  private static void add(StringBuilder sql, List<Object> values, String clause, Object value) {
    sql.append(clause);
    values.add(value);
  }

  private interface Work<T> {
    T run() throws SQLException;
  }

  private interface Act {
    void run() throws SQLException;
  }

  private void guarded(Act act) {
    guarded(
        () -> {
          act.run();
          return null;
        });
  }

  private <T> T guarded(Work<T> work) {
    try {
      return work.run();
    } catch (SQLException e) {
      still.check(connection);
      throw Trouble.of("read", file, e);
    }
  }
}
