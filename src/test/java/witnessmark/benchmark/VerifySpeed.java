package witnessmark.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;

/**
 * How long {@code ledger verify} takes, beside reading the entries' bytes from the same file and
 * hashing each: {@code VerifySpeed DIRECTORY ENTRIES}. The log is made when it is not there.
 */
final class VerifySpeed {
  private static final int ROUNDS = 10;

  private VerifySpeed() {}

  public static void main(String[] args) throws Exception {
    Path directory = Path.of(args[0]);
    LedgerFiles files =
        Files.exists(directory.resolve("ledger.db"))
            ? new LedgerFiles(directory)
            : Data.withHistory(directory, Integer.parseInt(args[1]), 20);
    System.out.printf("%d bytes of file%n", Files.size(files.database()));
    for (int round = 0; round < ROUNDS; round++) {
      long began = System.nanoTime();
      long bytes = plain(files.database());
      long read = System.nanoTime();
      long size = verified(files);
      long end = System.nanoTime();
      System.out.printf(
          "%d entries, %d bytes: read and hashed in %d ms, verified in %d ms, ratio %.2f%n",
          size,
          bytes,
          (read - began) / 1_000_000,
          (end - read) / 1_000_000,
          (double) (end - read) / (read - began));
    }
  }

  /** Reads every entry's bytes in order and hashes each. */
  private static long plain(Path file) throws SQLException, GeneralSecurityException {
    MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
    long bytes = 0;
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = db.createStatement();
        ResultSet rows = statement.executeQuery("SELECT bytes FROM entry ORDER BY n")) {
      while (rows.next()) {
        byte[] entry = rows.getBytes(1);
        sha256.digest(entry);
        bytes += entry.length;
      }
    }
    return bytes;
  }

  private static long verified(LedgerFiles files) throws IOException {
    try (RawReader raw = RawReader.open(files.database())) {
      Report report = Verifier.verify(raw, Files.readString(files.verifier()));
      if (!report.verifies()) {
        throw new IllegalStateException(report.findings().toString());
      }
      return report.size();
    }
  }
}
