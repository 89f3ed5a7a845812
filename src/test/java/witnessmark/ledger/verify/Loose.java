package witnessmark.ledger.verify;

import java.io.IOException;
import java.util.List;

/**
 * A ledger whose tables take anything, so that tests can put anything in. It says that they are
 * made as the format asks; what becomes of those that are not is held by {@code SchemaTest}.
 */
record Loose(RawLedger ledger) implements RawLedger {
  @Override
  public Rows schema() {
    return new Rows() {
      private int row = -1;

      @Override
      public boolean next() {
        return ++row < Schema.STATEMENTS.size();
      }

      @Override
      public Object value(int column) {
        String statement = Schema.STATEMENTS.get(row);
        String[] words = statement.split(" ");
        String table = words[1].equals("TABLE") ? words[2] : statement.split(" ON ")[1];
        return switch (column) {
          case 0 -> Schema.name(statement).split(" ")[0];
          case 1 -> words[2];
          case 2 -> table.split(" ")[0];
          default -> statement;
        };
      }

      @Override
      public void close() {
        // nothing is open
      }
    };
  }

  @Override
  public long applicationId() throws IOException {
    return ledger.applicationId();
  }

  @Override
  public long userVersion() throws IOException {
    return ledger.userVersion();
  }

  @Override
  public List<String> complaints() throws IOException {
    return ledger.complaints();
  }

  @Override
  public Rows entries() throws IOException {
    return ledger.entries();
  }

  @Override
  public Rows checkpoints() throws IOException {
    return ledger.checkpoints();
  }

  @Override
  public Rows tiles(int level) throws IOException {
    return ledger.tiles(level);
  }

  @Override
  public Rows otherTiles(int top) throws IOException {
    return ledger.otherTiles(top);
  }

  @Override
  public Rows traces() throws IOException {
    return ledger.traces();
  }

  @Override
  public Rows jobs() throws IOException {
    return ledger.jobs();
  }

  @Override
  public void close() {
    ledger.close();
  }
}
