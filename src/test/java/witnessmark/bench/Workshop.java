package witnessmark.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;

/**
 * A workshop as somebody would set it up by hand: a directory with a log in {@code
 * ./witnessmark-data}, a configuration {@code shop.toml}, enrolled people and wrenches.
 */
public final class Workshop {
  /** An attest step, four fasteners in a pattern with an angle window, two more that follow. */
  public static final String RAM_210 =
      """
      [procedure]
      id = "RAM-210"
      revision = "C"
      title = "Rear-axle module"
      unit-pattern = "ATR-26-[0-9]{4}"

      [[step]]
      id = "frame-check"
      kind = "attest"
      title = "Frame"
      statement = "The frame's seats are clean and free of paint."

      [[step]]
      id = "carrier-left"
      kind = "tighten"
      title = "Axle carrier, left"
      fasteners = 4
      order = "pattern"
      pattern = [1, 3, 2, 4]
      torque = "33 N.m"
      tolerance = "10 %"
      angle-min = "20"
      angle-max = "60"
      note = "Position 1 is front top."

      [[step]]
      id = "cross-member"
      kind = "tighten"
      title = "Cross-member to frame"
      fasteners = 2
      torque = "45 N.m"
      tolerance = "10 %"
      after = ["carrier-left"]
      """;

  private static final String BRIDGE = "shop-1";
  private static final String DATA = "witnessmark-data";
  private static Path template;

  private final Path directory;
  private Program program;
  private String config =
      """
      [bridge]
      name = "shop-1"
      health-every = "200 ms"
      """;

  private Workshop(Path directory) {
    this.directory = directory;
    this.program = new Program(directory);
  }

  /** The workshop that is there already. */
  public static Workshop in(Path directory) {
    return new Workshop(directory);
  }

  /** A workshop with a new log, and nobody and nothing enrolled. */
  public static Workshop empty(Path directory) {
    Workshop workshop = new Workshop(directory);
    workshop.run("ledger", "create");
    return workshop;
  }

  /**
   * A workshop with entries 0 to 4: the log, badge-07, badge-11, TW-0417 (20 to 100 N.m) and the
   * procedure {@link #RAM_210}. Made once by commands, then copied, because commands take long.
   */
  public static synchronized Workshop furnished(Path directory) {
    try {
      if (template == null) {
        Path made = Files.createTempDirectory(Path.of("target").toAbsolutePath(), "workshop");
        Workshop workshop = empty(made);
        workshop.run("operator", "enrol", "badge-07", "--name", "bench 1");
        workshop.run("operator", "enrol", "badge-11", "--name", "quality", "--role", "quality");
        workshop.enrol("TW-0417", "100 N.m");
        workshop.release("RAM-210.toml", RAM_210);
        template = made.resolve(DATA);
      }
      Path data = Files.createDirectories(directory.resolve(DATA));
      try (Stream<Path> files = Files.list(template)) {
        for (Path file : files.toList()) {
          Files.copy(file, data.resolve(file.getFileName()));
        }
      }
      return new Workshop(directory);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Enrols a wrench whose calibration is in force. */
  public void enrol(String serial, String max) {
    LocalDate today = LocalDate.now(ZoneOffset.UTC);
    run(
        "wrench",
        "enrol",
        serial,
        "--max",
        max,
        "--calibrated",
        today.minusDays(60).toString(),
        "--due",
        today.plusDays(300).toString());
  }

  /** Everything is run by that command from now on, such as {@code nsenter}. */
  public Workshop under(List<String> prefix) {
    program = new Program(directory, prefix);
    return this;
  }

  /** Adds a line to the configuration's table {@code [bridge]}. */
  public Workshop bridge(String line) {
    config = config.replaceFirst("\n", "\n" + line + "\n");
    return this;
  }

  /** Listens to the broker. */
  public Workshop on(Mosquitto broker) {
    return on(broker.url());
  }

  /** Listens to a broker at that address. */
  public Workshop on(String url) {
    config += "\n[[mqtt]]\nname = \"broker\"\nurl = \"" + url + "\"\n";
    return this;
  }

  /** Hands checkpoints outside, every second. */
  public Workshop dropping(Path drop) {
    config +=
        "\n[checkpoints]\npublish-every = \"1 s\"\nevery = \"1 s\"\ndrop = \"" + drop + "\"\n";
    return this;
  }

  /** Listens to a cable at a station, which speaks {@code demo-data/profiles/demo-line.toml}. */
  public Workshop on(PtyPair cable, String station) {
    return serial("line", "demo-line.toml", cable, station);
  }

  /** Listens to a scanner that speaks {@code demo-data/profiles/scanner-line.toml}. */
  public Workshop scanner(PtyPair cable, String station) {
    return serial("scanner", "scanner-line.toml", cable, station);
  }

  private Workshop serial(String name, String profile, PtyPair cable, String station) {
    write(profile, read(Path.of("demo-data/profiles", profile).toAbsolutePath()));
    config +=
        "\n[[serial]]\nname = \""
            + name
            + "\"\nport = \""
            + cable.bridge()
            + "\"\nstation = \""
            + station
            + "\"\nprofile = \""
            + profile
            + "\"\n";
    return this;
  }

  /** Adds to the configuration. */
  public Workshop with(String toml) {
    config += "\n" + toml;
    return this;
  }

  /** Serves health and figures. */
  public Workshop http(int port) {
    return with("[http]\nlisten = \"127.0.0.1:" + port + "\"\n");
  }

  /** Writes and releases a procedure. */
  public void release(String name, String text) {
    write(name, text);
    run("procedure", "release", name, "--by", "badge-11");
  }

  /** Opens a job; its name. */
  public String open(String procedure, String unit, String station) {
    String out = run("job", "open", "--procedure", procedure, "--unit", unit, "--station", station);
    return out.replaceFirst("(?s)^Opened job (J-[0-9]+) .*$", "$1");
  }

  public Path write(String name, String text) {
    try {
      return Files.writeString(directory.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs a command that has to succeed; its output. */
  public String run(String... arguments) {
    return program.run(arguments).orThrow();
  }

  /** Runs a command that may fail. */
  public Program.Ended attempt(String... arguments) {
    return program.run(arguments);
  }

  public Program program() {
    return program;
  }

  public Path directory() {
    return directory;
  }

  /** The data directory. */
  public Path data() {
    return directory.resolve(DATA);
  }

  /** The log's database. */
  public Sqlite ledger() {
    return new Sqlite(data().resolve("ledger.db"), program.prefix());
  }

  /** An entry of the log. */
  public JsonNode entry(long n) {
    List<String> line = ledger().run("SELECT CAST(bytes AS TEXT) FROM entry WHERE n = " + n + ";");
    return Json.of(String.join("\n", line));
  }

  /** The file that the configuration is written to as it stands. */
  public Path config() {
    return write("shop.toml", config);
  }

  /** Starts the daemon. */
  public DaemonProcess daemon(String... options) {
    return DaemonProcess.start(program, config(), options);
  }

  /** Starts the daemon and waits until all its links are up. */
  public DaemonProcess daemon(Mosquitto broker) {
    return daemon().awaitOk(broker, BRIDGE);
  }
}
