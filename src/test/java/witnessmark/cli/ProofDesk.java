package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A small log, and what is said to commands about it. */
abstract class ProofDesk {
  private static final String TEXT =
      """
      [procedure]
      id = "RAM-210"
      revision = "C"
      title = "Rear-axle module"
      [[step]]
      id = "frame-check"
      kind = "attest"
      title = "Frame"
      statement = "The frame's seats are clean."
      """;

  @TempDir Path directory;
  String data;
  String key;

  record Said(int status, String out, String err) {}

  static Said say(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err, true));
    return new Said(line.execute(arguments), out.toString(), err.toString());
  }

  static Said done(String... arguments) {
    Said said = say(arguments);
    assertThat(said.status()).as(said.toString()).isZero();
    return said;
  }

  String at(String name) {
    return directory.resolve(name).toString();
  }

  /** Entries: 0 log, 1 person, 2 procedure, 3 job J-3, 4 attested, 5 closed. */
  @BeforeEach
  void begin() throws IOException {
    data = "--data=" + at("data");
    done("ledger", "create", data);
    key =
        "--key=" + Files.copy(directory.resolve("data/ledger.pub"), directory.resolve("shop.pub"));
    done("operator", "enrol", "badge-07", data);
    String file = Files.writeString(directory.resolve("p.toml"), TEXT).toString();
    done("procedure", "release", file, "--by=badge-07", data);
    done(
        "job",
        "open",
        "--procedure=RAM-210",
        "--unit=ATR-26-0147",
        "--station=bench-1",
        "--by=badge-07",
        data);
    done("attest", "J-3", "frame-check", "--by=badge-07", data);
  }

  String keep(String name) throws IOException {
    return Files.writeString(directory.resolve(name), done("ledger", "checkpoint", data).out())
        .toString();
  }

  String[] checkpoint() {
    return done("ledger", "checkpoint", data).out().split("\n");
  }

  /** Runs the statements with the triggers away, and puts these back. */
  void tamper(String... statements) throws Exception {
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + at("data/ledger.db"));
        Statement statement = db.createStatement()) {
      Map<String, String> triggers = new LinkedHashMap<>();
      try (ResultSet rows =
          statement.executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")) {
        while (rows.next()) {
          triggers.put(rows.getString(1), rows.getString(2));
        }
      }
      for (String name : triggers.keySet()) {
        statement.execute("DROP TRIGGER " + name);
      }
      for (String sql : statements) {
        statement.execute(sql);
      }
      for (String sql : triggers.values()) {
        statement.execute(sql);
      }
    }
  }
}
