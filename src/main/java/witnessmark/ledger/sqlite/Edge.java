package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import witnessmark.ledger.Frontier;
import witnessmark.ledger.Hashing;

/**
 * The end of the log: the tree's right edge, the last link, and the checkpoint that covers them.
 */
final class Edge {
  private final Frontier frontier;
  private byte[] link;
  private String note;

  private Edge(Frontier frontier, byte[] link, String note) {
    this.frontier = frontier;
    this.link = link;
    this.note = note;
  }

  /** Rebuilds the edge from the tiles and the few entries after the last full one. */
  static Edge read(Connection connection) throws SQLException {
    long size = Database.number(connection, "SELECT coalesce(max(n) + 1, 0) FROM entry");
    Frontier frontier = new Frontier();
    int top = 1;
    while (size >> (8 * (top + 1)) > 0) {
      top++;
    }
    for (int level = top; level >= 1; level--) {
      long from = frontier.size() >> (8 * level);
      long to = size >> (8 * level);
      for (byte[] hash :
          blobs(
              connection,
              "hash FROM tile WHERE level = "
                  + level
                  + " AND idx >= "
                  + from
                  + " AND idx < "
                  + to
                  + " ORDER BY idx")) {
        frontier.appendTile(level, hash);
      }
    }
    for (byte[] bytes :
        blobs(
            connection,
            "bytes FROM entry WHERE n >= "
                + frontier.size()
                + " AND n < "
                + size
                + " ORDER BY n")) {
      frontier.append(Hashing.leaf(bytes), (level, index, hash) -> {});
    }
    byte[] link = new byte[32];
    for (byte[] last : blobs(connection, "link FROM entry WHERE n = " + (size - 1))) {
      link = last;
    }
    return new Edge(frontier, link, note(connection));
  }

  private static String note(Connection connection) throws SQLException {
    try (PreparedStatement query = connection.prepareStatement("SELECT note FROM checkpoint");
        ResultSet rows = query.executeQuery()) {
      return rows.next() ? rows.getString(1) : null;
    }
  }

  private static List<byte[]> blobs(Connection connection, String what) throws SQLException {
    List<byte[]> found = new ArrayList<>();
    try (PreparedStatement query = connection.prepareStatement("SELECT " + what);
        ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        found.add(rows.getBytes(1));
      }
    }
    return found;
  }

  Edge copy() {
    return new Edge(frontier.copy(), link, note);
  }

  long size() {
    return frontier.size();
  }

  byte[] root() {
    return frontier.root();
  }

  /** The newest checkpoint known to cover this edge; null before the first. */
  String note() {
    return note;
  }

  void signed(String checkpoint) {
    note = checkpoint;
  }

  /** Takes in an entry and returns its link. */
  byte[] append(byte[] bytes, Frontier.TileSink tiles) {
    byte[] leaf = Hashing.leaf(bytes);
    link = Hashing.link(link, leaf);
    frontier.append(leaf, tiles);
    return link;
  }
}
