package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** What somebody reads whose value cannot be used: what was expected, found, and what to do. */
class WrongValuesTest {
  @TempDir private Path directory;

  private record Said(int status, String err) {}

  private static Said say(String... arguments) {
    StringWriter err = new StringWriter();
    CommandLine line = Main.commands();
    line.setOut(new PrintWriter(new StringWriter())).setErr(new PrintWriter(err, true));
    int status = line.execute(arguments);
    return new Said(status, err.toString());
  }

  private void assertSaid(int status, String text, String... arguments) {
    Said said = say(arguments);
    assertThat(said.err()).startsWith(text.replace("DIR", directory.toString()));
    assertThat(said.status()).isEqualTo(status);
    assertThat(said.err()).doesNotContain("java.").doesNotContain("Exception");
  }

  private String data() {
    String data = directory.resolve("data").toString();
    assertThat(say("ledger", "create", "--data", data)).isEqualTo(new Said(0, ""));
    return data;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "explain abc|Invalid value for positional parameter at index 0 (ENTRY): \"abc\" is no whole"
            + " number; write one like 57",
        "explain 99999999999999999999|Invalid value for positional parameter at index 0 (ENTRY):"
            + " \"99999999999999999999\" is no whole number; write one like 57",
        "demo --seed x|Invalid value for option '--seed': \"x\" is no whole number; write one like"
            + " 57",
        "wrench enrol W --max 9 --calibrated 2026-02-30|Invalid value for option '--calibrated':"
            + " \"2026-02-30\" is no day of the calendar; write year-month-day, e.g. 2026-09-01",
        "wrench enrol W --max 9 --calibrated 1.2.26|Invalid value for option '--calibrated':"
            + " \"1.2.26\" is no day of the calendar; write year-month-day, e.g. 2026-09-01",
        "wrench enrol W --max 9Nm --calibrated 2026-02-01|\"9Nm\" is not a torque; write number,"
            + " blank, unit, e.g. \"24 lbf.ft\"",
        "trace --verdict overtorque|unknown verdict \"overtorque\"; did you mean \"over-torque\"?"
            + " Allowed are in-band, under-torque, over-torque, angle-low, angle-high, undecided",
        "trace --kind wibble|unknown kind \"wibble\"; allowed are assigned, attested, calibration-ended, ",
        "trace --kind torqe|unknown kind \"torqe\"; did you mean \"torque\"? Allowed are assigned, ",
        "trace --from 2026-11-26 --to 2026-11-25|--from 2026-11-26 is not before --to 2026-11-25:"
            + " nothing lies between; exchange them",
        "trace --from 2026-11-25T10:00:00Z --to 2026-11-25T10:30:00+01:00|--from"
            + " 2026-11-25T10:00:00Z is not before --to 2026-11-25T10:30:00+01:00: nothing lies",
        "procedure check demo-data/RAM-210.toml --wrench TW-417=angle|unknown wrench \"TW-417\"; did"
            + " you mean \"TW-0417\"? Allowed are TW-0417, TW-0502",
        "procedure check demo-data/RAM-210.toml --wrench TW-0417=angel|unknown ability \"angel\";"
            + " did you mean \"angle\"? Allowed are torque-only, angle, position, breakaway",
        "procedure check demo-data/RAM-210.toml --wrench TW-0417|\"TW-0417\" does not say what the"
            + " wrench shows; write it like TW-0417=angle",
        "procedure release demo-data/RAM-210.toml --acknowledge band-wide=x|\"band-wide=x\" names no"
            + " finding and its reason; write it like band-wide@pivot=\"as the maker's instructions"
            + " have it\"",
        "procedure release demo-data/RAM-210.toml --acknowledge a@b=x --acknowledge a@b=y|a@b is"
            + " acknowledged twice; give one reason",
        "procedure release demo-data/RAM-210.toml --acknowledge a@b=|a reason (--because) must be",
        "procedure check demo-data/RAM-210.toml --data=|--data is empty; name the data directory,"
            + " e.g. --data witnessmark-data",
        "trace --from +999999999-12-31 --to +999999999-12-31|\"+999999999-12-31\" is no date or"
            + " time; write 2026-11-25 or 2026-11-25T08:00:00+01:00",
      })
  void aWrongValueOnTheCommandLineIsStatus2(String line, String text) {
    assertSaid(2, text, line.split(" "));
  }

  @Test
  void aUnitSpeltAnotherWayIsAskedAbout() {
    assertSaid(
        2,
        "unknown unit \"Nm\"; did you mean \"N.m\"? Allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m"
            + " kgf.cm\n",
        "wrench",
        "enrol",
        "TW-0417",
        "--max=100 Nm",
        "--calibrated=2026-09-01");
  }

  @Test
  void aPeriodOfOneDayIsNotTurnedRound() {
    assertSaid(
        1,
        "Nothing on record matches.\n",
        "trace",
        "--from=2026-11-25",
        "--to=2026-11-25",
        "--verdict=in-band",
        "--kind=torque",
        "--data=" + data());
  }

  @Test
  void aFileWhereADirectoryShouldBeIsStatus4() throws IOException {
    String file = Files.writeString(directory.resolve("file"), "x").toString();
    String hint = ". Name a new or empty directory that you may write to with --data.\n";
    assertSaid(
        4,
        "No log can be begun in DIR/file: a file of that name is in the way" + hint,
        "ledger",
        "create",
        "--data",
        file);
    assertSaid(
        4,
        "No log can be begun in DIR/file/in: not a directory" + hint,
        "ledger",
        "create",
        "--data",
        file + "/in");
    assertSaid(
        4,
        "DIR/file is a file; name the directory that the log is in with --data.\n",
        "job",
        "status",
        "--data",
        file);
    assertSaid(
        4,
        "DIR/file/in cannot be made: not a directory.\n"
            + "Name a new directory in a place where you may write with --keep.\n",
        "demo",
        "--keep",
        file + "/in");
  }

  @Test
  void aDirectoryWhereAFileShouldBeIsStatus3() {
    assertSaid(
        3,
        "DIR cannot be read: it is a directory; name a readable file\n",
        "procedure",
        "check",
        directory.toString());
  }

  @Test
  void aJobThatHasEndedIsSaidToHaveEndedAndWhen() {
    String data = "--data=" + data();
    say("procedure", "release", "demo-data/RAM-210.toml", data);
    say("job", "open", "--procedure=RAM-210", "--unit=ATR-26-0147", "--station=bench-1", data);
    assertThat(say("job", "abandon", "J-2", "--because=scrapped", data).status()).isZero();
    for (String again : new String[] {"close", "abandon"}) {
      Said said =
          again.equals("close")
              ? say("job", "close", "J-2", data)
              : say("job", "abandon", "J-2", "--because=twice", data);
      assertThat(said.status()).isEqualTo(1);
      assertThat(said.err())
          .matches(
              "Job J-2 is abandoned already, since 20[-0-9]{8}T[0-9:.]{12}Z \\(entry 3\\)\\.\n");
    }
    assertSaid(
        1, "No job J-9 is open or suspended; none is. Open one.\n", "job", "close", "J-9", data);
  }

  @Test
  void theLogsOwnVerifierKeyIsSurroundingsAndANamedOneInput() throws IOException {
    String data = data();
    Path key = Path.of(data, "ledger.pub");
    String advice =
        ".\nRestore it from a backup, or name the copy that was kept elsewhere with --key FILE.\n";
    String none = " holds no verifier key, one line NAME+KEYID+BASE64 as ledger create prints it";
    Path kept = Files.move(key, directory.resolve("kept.pub"));
    assertSaid(
        4,
        "DIR/data/ledger.pub cannot be read: there is no such file" + advice,
        "ledger",
        "verify",
        "--data",
        data);
    assertSaid(
        4,
        "The log's key pair in DIR/data cannot be read (ledger.pub: there is no such file).",
        "operator",
        "enrol",
        "badge-07",
        "--data",
        data);
    Files.writeString(key, "junk");
    assertSaid(4, "DIR/data/ledger.pub" + none + advice, "ledger", "verify", "--data", data);
    assertSaid(
        4,
        "The log's key pair in DIR/data cannot be read (they do not hold the two halves of a key).",
        "operator",
        "enrol",
        "badge-07",
        "--data",
        data);
    assertSaid(
        3,
        "DIR/data/ledger.pub" + none + "; name the file that you kept it in\n",
        "ledger",
        "verify",
        "--data",
        data,
        "--key",
        key.toString());
    assertThat(say("ledger", "verify", "--data", data, "--key", kept.toString()))
        .isEqualTo(new Said(0, ""));
  }
}
