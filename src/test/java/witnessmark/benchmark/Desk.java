package witnessmark.benchmark;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;
import witnessmark.recall.Recall;
import witnessmark.recall.Survey;
import witnessmark.report.Line;

/** What the quality desk asks of a log of many entries, beside the least that could answer. */
public final class Desk {
  private static final int FASTENERS = 40;
  private static final int UNITS = 200;

  private final LedgerFiles files;
  private final int rounds;

  private Desk(LedgerFiles files, int rounds) {
    this.files = files;
    this.rounds = rounds;
  }

  /**
   * @param args how many entries, how many rounds, and then what to measure (default everything);
   *     the log is made once and kept in target/desk for the next run
   */
  public static void main(String[] args) throws IOException {
    int entries = Integer.parseInt(args[0]);
    List<String> chosen = args.length < 3 ? List.of() : List.of(args).subList(2, args.length);
    Path directory = Path.of("target", "desk", "log-" + entries);
    LedgerFiles files = new LedgerFiles(directory);
    if (!Files.exists(files.directory().resolve("made"))) {
      Directories.delete(directory);
      long began = System.nanoTime();
      Data.forTheDesk(directory, entries, FASTENERS);
      Files.createFile(files.directory().resolve("made"));
      Print.note("made in " + (System.nanoTime() - began) / 1_000_000_000 + " s");
    }
    Desk desk = new Desk(files, Integer.parseInt(args[1]));
    Print.title("The quality desk on a log of " + entries + " entries");
    if (chosen.isEmpty() || chosen.contains("unit")) {
      desk.unit();
    }
    if (chosen.isEmpty() || chosen.contains("csv")) {
      desk.csv();
    }
    if (chosen.isEmpty() || chosen.contains("verify")) {
      desk.verify();
    }
    if (chosen.isEmpty() || chosen.contains("recall")) {
      desk.recall();
    }
  }

  /** A unit's lines, beside the bare query of the same entries, unit by unit in turn. */
  private void unit() {
    Figures entries = new Figures();
    Figures lines = new Figures();
    Figures bare = new Figures();
    Random random = new Random(1);
    try (Reading reading = SqliteReading.open(files);
        Connection connection = connection();
        PreparedStatement query =
            connection.prepareStatement(
                "SELECT e.n, e.bytes FROM job j JOIN trace t ON t.job = j.job"
                    + " JOIN entry e ON e.n = t.n WHERE j.unit = ? ORDER BY e.n")) {
      long units = reading.size() / (2L * FASTENERS + 3) - 1;
      for (int i = 0; i < 2 * UNITS; i++) {
        String unit = String.format("ATR-26-%04d", random.nextLong(units));
        long began = System.nanoTime();
        List<Line> found = lines(reading, unit);
        long between = System.nanoTime();
        int rows = rows(query, unit);
        long then = System.nanoTime();
        reading.find(query(unit), s -> {});
        long end = System.nanoTime();
        if (rows != found.size() || rows < 2 * FASTENERS) {
          throw new IllegalStateException(unit + ": " + rows + " rows, " + found.size() + " lines");
        }
        if (i >= UNITS) {
          lines.add((between - began) / 1e6);
          bare.add((then - between) / 1e6);
          entries.add((end - then) / 1e6);
        }
      }
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    Print.line("one unit, its lines (aim: under 150 ms)", lines, "ms");
    Print.line("one unit, bare query", bare, "ms");
    Print.line("one unit, its entries", entries, "ms");
    Print.line("entries / bare query (aim: 1.5)", Figures.ratio(entries, bare), "");
    Print.line("lines / bare query", Figures.ratio(lines, bare), "");
  }

  private static List<Line> lines(Reading reading, String unit) {
    List<Line> found = new ArrayList<>();
    reading.find(query(unit), s -> found.add(Line.of(s.n(), EntryJson.read(s.bytes()))));
    return found;
  }

  private static Query query(String unit) {
    Optional<String> any = Optional.empty();
    return new Query(Optional.of(unit), any, any, any, any, any, any, any, any, any, any);
  }

  private static int rows(PreparedStatement query, String unit) throws SQLException {
    query.setString(1, unit);
    int rows = 0;
    try (ResultSet found = query.executeQuery()) {
      while (found.next()) {
        found.getLong(1);
        found.getBytes(2);
        rows++;
      }
    }
    return rows;
  }

  /** The whole log as CSV by the program in 256 MB, beside the sqlite3 shell's own. */
  private void csv() throws IOException {
    Figures program = new Figures();
    Figures shell = new Figures();
    Path out = files.directory().resolve("out.csv");
    for (int i = 0; i < rounds; i++) {
      program.add(
          seconds(
              out,
              "java",
              "-Xmx192m",
              "-XX:+UseSerialGC",
              "-cp",
              System.getProperty("java.class.path"),
              "witnessmark.cli.Main",
              "trace",
              "--csv",
              "--data",
              files.directory().toString()));
      shell.add(
          seconds(
              out,
              "sqlite3",
              "-readonly",
              "-csv",
              files.database().toString(),
              "SELECT t.*, CAST(e.bytes AS TEXT) FROM trace t JOIN entry e ON e.n = t.n"
                  + " ORDER BY t.n"));
    }
    Files.delete(out);
    Print.line("whole log as CSV, heap of 192 MB", program, "s");
    Print.line("the sqlite3 shell's CSV of the same rows", shell, "s");
    Print.line(
        "speed of ours / the shell's (aim: at least 0.5)", Figures.ratio(shell, program), "");
  }

  private static double seconds(Path out, String... command) {
    try {
      long began = System.nanoTime();
      Process process =
          new ProcessBuilder(command)
              .redirectOutput(out.toFile())
              .redirectError(new File("/dev/null"))
              .start();
      int status = process.waitFor();
      if (status != 0) {
        throw new IllegalStateException(command[0] + " ended with " + status);
      }
      return (System.nanoTime() - began) / 1e9;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The whole check, beside reading and hashing the same bytes. */
  private void verify() throws IOException {
    Figures whole = new Figures();
    Figures hashing = new Figures();
    String key = Files.readString(files.verifier()).strip();
    for (int i = 0; i < rounds; i++) {
      long began = System.nanoTime();
      try (RawReader raw = RawReader.open(files.database())) {
        Report report = Verifier.verify(raw, key);
        if (!report.verifies()) {
          throw new IllegalStateException("does not verify: " + report.findings());
        }
      }
      long between = System.nanoTime();
      hash();
      hashing.add((System.nanoTime() - between) / 1e9);
      whole.add((between - began) / 1e9);
    }
    Print.line("ledger verify", whole, "s");
    Print.line("reading and hashing the same bytes", hashing, "s");
    Print.line("verify / hashing (aim: 3)", Figures.ratio(whole, hashing), "");
  }

  private void hash() {
    try (Connection connection = connection();
        PreparedStatement query =
            connection.prepareStatement("SELECT bytes, link FROM entry ORDER BY n");
        ResultSet rows = query.executeQuery()) {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      while (rows.next()) {
        sha.update(rows.getBytes(1));
        sha.digest(rows.getBytes(2));
      }
    } catch (SQLException | NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private void recall() {
    Figures seconds = new Figures();
    Recall recall = null;
    for (int i = 0; i < rounds; i++) {
      long began = System.nanoTime();
      try (Reading reading = SqliteReading.open(files)) {
        Survey survey = new Survey(reading, Work.wrench(0));
        recall = survey.recall(survey.finding(OptionalLong.empty()).orElseThrow());
      }
      seconds.add((System.nanoTime() - began) / 1e9);
    }
    Print.line(
        "recall of " + recall.joints().size() + " joints (aim: 3 s at 200,000)", seconds, "s");
  }

  private Connection connection() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + files.database());
  }
}
