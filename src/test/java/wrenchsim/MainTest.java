package wrenchsim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wrenchsim.wrench.Life;
import wrenchsim.wrench.Restart;
import wrenchsim.wrench.Store;

class MainTest {
  private record Ran(int status, String out, String err) {}

  private static Ran run(String... args) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    ByteArrayOutputStream complained = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(complained, true, StandardCharsets.UTF_8));
      int status = Main.run(args);
      return new Ran(
          status,
          said.toString(StandardCharsets.UTF_8),
          complained.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private static void assertRefused(String complaint, String command, String... args) {
    Ran ran = run(args);
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err().lines())
        .containsExactly("wrenchsim: " + complaint, "wrenchsim: for help: " + command + " --help");
  }

  @Test
  void helpNamesEveryCommandAndStatus() {
    Ran ran = run("--help");
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("shop", "burst", "line", "Exit status:");
    for (String command : new String[] {"shop", "burst", "line"}) {
      Ran help = run(command, "--help");
      assertThat(help.status()).isZero();
      assertThat(help.out()).contains("Example:\n  wrenchsim " + command + " --");
    }
  }

  @Test
  void wrongArgumentsAreRefusedWithWhatWouldBeRight() {
    assertRefused("name a command: shop, burst or line", "wrenchsim");
    assertRefused(
        "Missing required option: '--wrench=WRENCH'", "wrenchsim shop", "shop", "--station", "b");
    assertRefused(
        "Invalid value for option '--station': a station is 1 to 64 of A-Z a-z 0-9 . _ - and not . or .., but got 'a/b'",
        "wrenchsim shop",
        "shop",
        "--station",
        "a/b",
        "--wrench",
        "TW-0417");
    assertRefused(
        "wrench TW-0417 is given twice",
        "wrenchsim shop",
        "shop",
        "--station=b",
        "--wrench=TW-0417",
        "--wrench=serial=TW-0417,max=30");
    assertRefused(
        "a mistake rate is 0 to 1, but is 2.0",
        "wrenchsim shop",
        "shop",
        "--station=b",
        "--wrench=TW-0417",
        "--mistake-rate=2");
    assertRefused(
        "a mistake rate is 0 to 1, but is 1.5",
        "wrenchsim shop",
        "shop",
        "--station=b",
        "--wrench=TW-0417",
        "--mistake-rate=skip=1",
        "--mistake-rate=wrong=0.5");
    assertRefused(
        "Invalid value for option '--rehit': the angle of a second hit is MEAN:DEVIATION in degrees, e.g. 1.5:0.5, but got '1.5'",
        "wrenchsim shop",
        "shop",
        "--station=b",
        "--wrench=TW-0417",
        "--rehit=1.5");
    assertRefused(
        "the scatter of a joint must be 0 to 0.3, but is 0.4",
        "wrenchsim shop",
        "shop",
        "--station=b",
        "--wrench=TW-0417",
        "--joint=hub=soft:0.4");
    assertRefused(
        "store belongs to the wrenches of 'shop'; burst and line send each reading at once",
        "wrenchsim burst",
        "burst",
        "--station=b",
        "--count=1",
        "--wrench=TW-0417,store=3");
    assertRefused(
        "a series needs --count 1 or more, --rate 0 or more, --first-event 0 or more and --torque above 0 and at most 100000, but got 0, 0.0, 1 and 45.0",
        "wrenchsim burst",
        "burst",
        "--station=b",
        "--count=0");
    assertRefused(
        "via belongs to the wrenches of 'shop'; burst speaks MQTT, and line takes --port or --virtual",
        "wrenchsim burst",
        "burst",
        "--station=b",
        "--count=1",
        "--wrench=TW-0417,via=port:/dev/ttyUSB0");
    assertRefused(
        "a broker is written tcp://HOST:PORT or ssl://HOST:PORT, but got 'localhost'",
        "wrenchsim burst",
        "burst",
        "--station=b",
        "--count=1",
        "--broker=localhost");
  }

  @Test
  void aWrongWrenchIsNamedInItsOwnWords() {
    for (String[] pair :
        new String[][] {
          {
            "TW-0417,mx=3",
            "'mx=3' is no NAME=VALUE; the names are serial, max, min, unit, resolution, angle, scatter, bias, clock, offset, drift, event, position, badge, wear, restart, reset, store, away, twice, half, via, baud"
          },
          {"max=3", "a wrench needs its serial number: serial=TW-0417"},
          {"TW-0417,max=3,max=4", "'max' is given twice in 'TW-0417,max=3,max=4'"},
          {"TW-0417,max=many", "max is a decimal number, but got 'many'"},
          {"TW-0417,angle=maybe", "angle is yes or no, but got 'maybe'"},
          {
            "TW-0417,unit=Nm",
            "unit is one of N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm, but got 'Nm'"
          },
          {"TW-0417,event=-1", "event is the first number, clock or none, but got '-1'"},
          {"TW-0417,store=many", "store is a whole number, but got 'many'"},
          {"TW-0417,twice=1", "twice goes with store=N only"},
          {"TW-0417,reset=1970", "reset goes with restart=N only"},
          {"TW-0417,restart=0", "a restart comes after 1 event or more, not 0"},
          {"TW-0417,via=smoke", "via is mqtt, virtual:LINK or port:PATH, but got 'smoke'"},
          {
            "TW-0417,event=none,via=virtual:tw",
            "a wrench on a serial line counts its events: event=none goes with via=mqtt only"
          },
        }) {
      assertRefused(
          "Invalid value for option '--wrench': " + pair[1],
          "wrenchsim burst",
          "burst",
          "--station=b",
          "--count=1",
          "--wrench=" + pair[0]);
    }
  }

  @Test
  void aWrenchsLifeIsWrittenBesideTheRest() {
    assertThat(
            WrenchOption.parse("TW-0417,wear=0.01,restart=50,reset=-7200,store=5")
                .numberedFrom(7)
                .life())
        .isEqualTo(
            new Life(
                0.01,
                Optional.of(new Restart(50, Optional.of(Duration.ofHours(-2)))),
                Optional.of(new Store(5, 0.1, 0.25, 0.25))));
    assertThat(WrenchOption.parse("TW-0417,restart=50,reset=1970").spec().life().restart())
        .contains(new Restart(50, Optional.empty()));
    assertThat(WrenchOption.parse("TW-0417").spec().life()).isEqualTo(Life.EVEN);
  }

  @Test
  void aWrenchMayNumberItsEventsFromTheTimeOfTheRun() {
    assertThat(
            WrenchOption.parse("TW-0417,event=clock")
                .at(java.time.Instant.parse("2026-01-01T00:00:01.230Z"))
                .firstEvent())
        .contains(123L);
  }

  @Test
  void aBrokerOrPortThatIsNotThereIsStatusFour(@TempDir Path directory) {
    Ran burst = run("burst", "--station=b", "--count=1", "--broker=tcp://127.0.0.1:1");
    assertThat(burst.status()).isEqualTo(4);
    assertThat(burst.err())
        .isEqualToIgnoringNewLines(
            "wrenchsim: no MQTT broker took us at tcp://127.0.0.1:1: Connection refused. Start the broker, or name another with --broker tcp://HOST:PORT.");
    Ran line = run("line", "--port=" + directory.resolve("none"), "--count=1");
    assertThat(line.status()).isEqualTo(4);
    assertThat(line.err())
        .isEqualToIgnoringNewLines(
            "wrenchsim: there is no serial port %s: plug it in, or name another (ls /dev/tty*)."
                .formatted(directory.resolve("none")));
  }
}
