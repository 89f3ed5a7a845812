package witnessmark.ledger.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Handover;
import witnessmark.ledger.KeyChange;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Live;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.NewLog;
import witnessmark.ledger.Stored;

/** The log in an SQLite file. */
public final class SqliteLedger implements Ledger {
  private static final int RECENT = 1000;

  private final Path file;
  private final Connection connection;
  private final LedgerFiles files;
  private final Statements statements;
  private final Repeats repeats;
  private final EndedJobs stays;

  private LogKey key;
  private final Footing footing;

  /** Where the tree and the links stood when this ledger last looked. */
  private Edge edge;

  private SqliteLedger(LedgerFiles files, Connection connection, LogKey key) throws SQLException {
    this.files = files;
    this.file = files.database();
    this.connection = connection;
    this.key = key;
    this.footing = new Footing(file);
    this.statements = new Statements(connection);
    this.repeats = new Repeats(connection);
    this.stays = new EndedJobs(connection);
    this.edge = Edge.read(connection);
    String note = edge.note();
    if (note != null) {
      // An end that no key opens is refused at its first use.
      signedBy(note, edge);
    }
  }

  /** Begins a new log without entries; the caller appends entry 0. */
  public static SqliteLedger create(LedgerFiles files) {
    LogKey key = NewLog.begin(files, Database::make);
    return on(files, Database.open(files.database()), key);
  }

  /**
   * Opens an existing log.
   *
   * @throws LedgerException when there is none, or it cannot be used
   */
  public static SqliteLedger open(LedgerFiles files) {
    files.mustExist();
    LogKey key = files.keys().get(0);
    Connection connection = Database.open(files.database());
    Database.check(connection, files.database());
    Database.renewIndexes(connection, files.database());
    return on(files, connection, key);
  }

  private static SqliteLedger on(LedgerFiles files, Connection connection, LogKey key) {
    try {
      return new SqliteLedger(files, connection, key);
    } catch (SQLException e) {
      throw Trouble.of("read", files.database(), e);
    }
  }

  /** The key that signs now. */
  public LogKey key() {
    return key;
  }

  /** The name under which the log signs. */
  @Override
  public String origin() {
    return key.name();
  }

  @Override
  public Live live() {
    try {
      Database.execute(connection, "BEGIN");
      try {
        edge = Edge.read(connection);
        trusted(edge);
        return LiveEntries.read(connection, edge.size());
      } finally {
        Database.execute(connection, "COMMIT");
      }
    } catch (SQLException e) {
      throw Trouble.of("read", file, e);
    }
  }

  @Override
  public Appending begin() {
    try {
      Database.execute(connection, "BEGIN IMMEDIATE");
    } catch (SQLException e) {
      throw Trouble.of("locked for writing", file, e);
    }
    try {
      return new Transaction();
    } catch (SQLException | RuntimeException e) {
      rollBack();
      if (e instanceof RuntimeException r) {
        throw r;
      }
      throw Trouble.of("read", file, (SQLException) e);
    }
  }

  @Override
  public void probe() {
    try {
      Database.execute(connection, "BEGIN IMMEDIATE");
      try {
        Database.touch(connection);
        Database.execute(connection, "COMMIT");
      } catch (SQLException e) {
        rollBack();
        throw e;
      }
    } catch (SQLException e) {
      throw Trouble.of("written", file, e);
    }
    footing.check();
  }

  @Override
  public long inPlace() {
    footing.check();
    try {
      return Database.number(connection, "SELECT coalesce(max(n) + 1, 0) FROM entry");
    } catch (SQLException e) {
      throw Trouble.of("read", file, e);
    }
  }

  private void trusted(Edge seen) throws SQLException {
    String note = statements.checkpoint();
    boolean unsigned = seen.size() == 0 && note == null;
    if (!unsigned && (note == null || !opened(note, seen))) {
      throw tampered();
    }
  }

  /** Whether the log's key signed that; the key may have been changed since it was read. */
  private boolean opened(String note, Edge seen) {
    return key.opens(note, seen.size(), seen.root()) || signedBy(note, seen);
  }

  /** Takes the key that signed that, where it is the log's, and finishes its change if need be. */
  private boolean signedBy(String note, Edge seen) {
    Optional<LogKey> signer =
        files.keyOf(note, seen.size(), seen.root()).filter(k -> k.name().equals(key.name()));
    if (signer.isPresent()) {
      key = signer.get();
      KeyChange.finish(files, key);
    }
    return signer.isPresent();
  }

  private LedgerException tampered() {
    return new LedgerException(
        "The end of the log "
            + file
            + " is not as it was signed, so nothing may be added to it."
            + " Run: witnessmark ledger verify --data "
            + file.getParent());
  }

  private void rollBack() {
    try {
      Database.execute(connection, "ROLLBACK");
    } catch (SQLException e) {
      // SQLite has already rolled back by itself, e.g. after a full disk
    }
  }

  @Override
  public void close() {
    if (footing.lost()) {
      return; // closing would remove the WAL file of whatever took the log's place
    }
    try {
      connection.close();
    } catch (SQLException e) {
      throw Trouble.of("closed", file, e);
    }
  }

  private final class Transaction implements Appending {
    private final List<Stored> news;
    private final Edge grown;
    private LogKey signer;
    private boolean ended;

    Transaction() throws SQLException {
      grown = edge.copy();
      news = statements.from(grown.size());
      if (!news.isEmpty()) {
        repeats.forget();
      }
      for (Stored entry : news) {
        grown.append(entry.bytes(), (level, index, hash) -> {});
      }
      if (statements.end() != grown.size()) {
        throw tampered();
      }
      if (!news.isEmpty() || !statements.checkpointIs(edge.note())) {
        trusted(grown);
      }
      signer = key;
    }

    @Override
    public List<Stored> news() {
      return news;
    }

    @Override
    public List<byte[]> same(String wrench, OptionalLong number, String fingerprint) {
      try {
        return repeats.same(wrench, number, fingerprint);
      } catch (SQLException e) {
        throw Trouble.of("read", file, e);
      }
    }

    @Override
    public List<byte[]> numbered(String wrench, long number) {
      try {
        return repeats.numbered(wrench, number);
      } catch (SQLException e) {
        throw Trouble.of("read", file, e);
      }
    }

    @Override
    public Optional<String> endedJob(String station, String moment) {
      try {
        return stays.endedJob(station, moment);
      } catch (SQLException e) {
        throw Trouble.of("read", file, e);
      }
    }

    @Override
    public Optional<Stored> entry(long n) {
      try {
        return statements.one(n);
      } catch (SQLException e) {
        throw Trouble.of("read", file, e);
      }
    }

    @Override
    public Optional<Stored> newest(String kind, String station) {
      try {
        return statements.newest(kind, station, grown.size() - RECENT);
      } catch (SQLException e) {
        throw Trouble.of("read", file, e);
      }
    }

    @Override
    public Handover handOver(LogKey next) {
      Handover handover = Handover.of(key, next, grown.size());
      signer = next;
      return handover;
    }

    @Override
    public long append(Draft draft) {
      try {
        long n = grown.size();
        byte[] link = grown.append(draft.bytes(), statements::tile);
        statements.entry(n, draft, link);
        repeats.appended(draft.trace());
        return n;
      } catch (SQLException e) {
        throw Trouble.of("written", file, e);
      }
    }

    @Override
    public void commit() {
      ended = true;
      try {
        if (grown.size() != edge.size() + news.size()) {
          grown.signed(signer.checkpoint(grown.size(), grown.root()));
          statements.checkpoint(grown.note());
        } else {
          grown.signed(statements.checkpoint());
        }
        Database.execute(connection, "COMMIT");
        footing.check();
        // a crash before this line: the entries are on disk and their senders send them again
        edge = grown;
        key = signer;
      } catch (SQLException e) {
        rollBack();
        throw Trouble.of("written", file, e);
      }
    }

    @Override
    public void close() {
      if (!ended) {
        ended = true;
        rollBack();
      }
    }
  }
}
