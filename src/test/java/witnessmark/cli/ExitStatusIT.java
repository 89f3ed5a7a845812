package witnessmark.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/** What somebody reads who types the wrong thing, and the exit status a script sees. */
class ExitStatusIT {
  @TempDir private Path directory;
  private Program program;
  private Workshop shop;

  @BeforeEach
  void begin() {
    program = new Program(directory);
    shop = Workshop.in(directory);
  }

  @Test
  void withoutACommandTheUsageSaysWhatThereIs() {
    Program.Ended none = program.run();
    assertThat(none.status()).isEqualTo(2);
    assertThat(none.out()).isEmpty();
    assertThat(none.err())
        .startsWith("Name a command.\nUsage: witnessmark [-hV] [COMMAND]\n")
        .contains("Begin with:  witnessmark demo");
    assertThat(program.run("--help").orThrow()).contains("Begin with:  witnessmark demo");
    assertThat(program.run("--version").orThrow()).isEqualTo("witnessmark 0.1.0\n");
  }

  @Test
  void theSimulatorsExamplesAreCommandsOfThisProgram() {
    for (String command : new String[] {"shop", "burst", "line"}) {
      assertThat(program.run("simulate", command, "--help").orThrow())
          .contains("Example:\n  witnessmark simulate " + command + " --")
          .doesNotContain("wrenchsim");
    }
  }

  @Test
  void aWrongCommandLineEndsWith2() {
    assertThat(program.run("frobnicate"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(2),
            e -> assertThat(e.err()).startsWith("Unmatched argument at index 0: 'frobnicate'\n"));
    assertThat(program.run("ledger", "verify", "--nope"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(2),
            e ->
                assertThat(e.err())
                    .startsWith(
                        "Unknown option: '--nope'\nFor help: witnessmark ledger verify --help\n"));
    assertThat(program.run("run"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(2),
            e -> assertThat(e.err()).startsWith("Missing required option: '--config=FILE'\n"));
    assertThat(
            program.run(
                "dispose", "J-5", "a/1", "--as", "bin", "--by", "badge-07", "--because", "x"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(2),
            e ->
                assertThat(e.err())
                    .startsWith(
                        "unknown decision \"bin\"; allowed are rework, replace, use-as-is, scrap\n"));
    assertThat(program.run("operator", "enrol", "badge-12", "--role", "boss"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(2),
            e ->
                assertThat(e.err())
                    .startsWith(
                        "unknown role \"boss\"; allowed are technician, second, quality\n"
                            + "For help: witnessmark operator enrol --help\n"));
  }

  @Test
  void anEmptyDirectoryNameBeginsNoHistoryHere() {
    Program.Ended ended = program.run("ledger", "create", "--data", "");
    assertThat(ended.status()).isEqualTo(2);
    assertThat(ended.err())
        .isEqualTo("--data is empty; name the data directory, e.g. --data witnessmark-data\n");
  }

  @Test
  void aWrongDirectoryBeginsNoSecondHistory() throws Exception {
    for (String[] command :
        new String[][] {
          {"job", "status", "--data", "elsewhere"},
          {"ledger", "verify", "--data", "elsewhere"},
          {"operator", "enrol", "badge-07", "--data", "elsewhere"},
          {"run", "--config", config().toString(), "--data", "elsewhere"}
        }) {
      Program.Ended ended = program.run(command);
      assertThat(ended.status()).as(ended.command()).isEqualTo(4);
      assertThat(ended.err())
          .as(ended.command())
          .isEqualTo(
              "No log in elsewhere. Is it the right directory (--data, WITNESSMARK_DATA)? To begin one:"
                  + " witnessmark ledger create --data elsewhere\n");
    }
    assertThat(Files.exists(directory.resolve("elsewhere"))).isFalse();
    program.run("ledger", "create").orThrow();
    assertThat(program.run("ledger", "create"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(4),
            e ->
                assertThat(e.err())
                    .isEqualTo("A log exists already in witnessmark-data; it goes on as it is.\n"));
  }

  private Path config() {
    return shop.write(
        "fine.toml",
        "[bridge]\nname = \"a\"\n[[mqtt]]\nname = \"b\"\nurl = \"tcp://127.0.0.1:9\"\n");
  }

  @Test
  void aFaultyFileEndsWith3AndEveryFaultHasItsPlace() {
    shop.write(
        "RAM-210.toml",
        Workshop.RAM_210
            .replace("\"45 N.m\"", "\"45 Nm\"")
            .replace("fasteners = 2", "fastners = 2"));
    Program.Ended check = program.run("procedure", "check", "RAM-210.toml");
    assertThat(check.status()).isEqualTo(3);
    assertThat(check.out()).isEmpty();
    assertThat(check.err().lines())
        .containsExactly(
            "RAM-210.toml:26:1: step \"cross-member\" has neither fasteners nor positions;"
                + " give the number, e.g. fasteners = 4, or the positions' names",
            "RAM-210.toml:30:1: unknown key \"fastners\" in step; did you mean \"fasteners\"?",
            "RAM-210.toml:31:14: unknown unit \"Nm\"; did you mean \"N.m\"?");
    assertThat(program.run("procedure", "check", "nowhere.toml"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(3),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "nowhere.toml cannot be read: there is no such file; name a readable file\n"));
  }

  @Test
  void aConfigurationThatCannotBeReadEndsWith3BeforeAnythingIsOpened() {
    assertThat(program.run("run", "--config", "nowhere.toml"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(3),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "nowhere.toml cannot be read: there is no such file; name a readable file\n"));
    shop.write(
        "shop.toml",
        "[bridge]\nname = \"shop 1\"\n\n[[mqtt]]\nname = \"broker\"\nurl = \"127.0.0.1\"\n");
    Program.Ended run = program.run("run", "--config", "shop.toml");
    assertThat(run.status()).isEqualTo(3);
    assertThat(run.err())
        .isEqualTo(
            "shop.toml:2:1: \"shop 1\" is no name; write 1 to 64 letters, digits, and . _ -\n"
                + "shop.toml:6:1: a broker's url must be tcp://HOST:PORT or ssl://HOST:PORT and nothing more;"
                + " write e.g. \"tcp://127.0.0.1:1883\" or \"ssl://host:8883\"\n");
    assertThat(Files.exists(directory.resolve("witnessmark-data"))).isFalse();
  }

  @Test
  void anAnswerOfNoEndsWith1() {
    Workshop.furnished(directory);
    assertThat(program.run("job", "close", "J-9"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e ->
                assertThat(e.err())
                    .isEqualTo("No job J-9 is open or suspended; none is. Open one.\n"));
    assertThat(program.run("trace", "--unit", "ATR-26-9999"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "Nothing on record matches.\nNo unit \"ATR-26-9999\" is on record.\n"));
    assertThat(
            program.run(
                "job", "open", "--procedure", "RAM-210", "--unit", "ATR-25-1", "--station", "b"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "Unit ATR-25-1 does not fit RAM-210, which is for units like ATR-26-[0-9]{4}. Check both.\n"));
  }

  @Test
  void withoutABrokerTheDaemonWaitsSaysSoAndGoesOnWhenThereIsOne() {
    Mosquitto broker = Mosquitto.start(directory);
    broker.stop();
    Workshop.furnished(directory);
    try (DaemonProcess daemon = shop.on(broker).daemon()) {
      daemon.awaitListening();
      await()
          .atMost(Duration.ofSeconds(20))
          .until(
              () ->
                  daemon
                      .log()
                      .contains(
                          broker.url()
                              + ": nothing answers there; check that the broker runs, and the url"));
      broker.restart();
      daemon.awaitOk(broker, "shop-1");
      assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    } finally {
      broker.close();
    }
  }

  @Test
  void theLocaleChangesNoByteOfACheckpointAndLosesNoName() throws Exception {
    shop = Workshop.furnished(directory);
    String usual = shop.run("ledger", "checkpoint");
    Program.Ended plain = program.in("C").run("ledger", "checkpoint");
    assertThat(plain.orThrow()).isEqualTo(usual).contains("\n\u2014 witnessmark.local/log/");
    // The shell writes the bytes, for this test's own locale may not be able to.
    Process name =
        shell(
            "LC_ALL=C",
            program.shell("operator", "enrol", "b-1", "--name"),
            "\"$(printf '\\316\\221')\"");
    assertThat(new String(name.getErrorStream().readAllBytes(), UTF_8))
        .contains("cannot carry")
        .contains("LC_ALL=C.UTF-8");
    assertThat(name.waitFor()).isEqualTo(4);
    assertThat(shop.run("ledger", "checkpoint")).isEqualTo(usual);
  }

  @Test
  void whatDoesNotGetThroughIsNotKeptSilentAbout() throws Exception {
    shop = Workshop.furnished(directory);
    Process full = shell(program.shell("ledger", "export", "--jsonl"), ">/dev/full");
    assertThat(new String(full.getErrorStream().readAllBytes(), UTF_8))
        .isEqualTo(
            "What was to be printed did not get through: No space left on device. What arrived is"
                + " cut off.\n");
    assertThat(full.waitFor()).isEqualTo(4);
  }

  private Process shell(String... words) throws IOException {
    return new ProcessBuilder("sh", "-c", String.join(" ", words))
        .directory(directory.toFile())
        .start();
  }
}
