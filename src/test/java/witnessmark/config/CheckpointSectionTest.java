package witnessmark.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.toml.FaultsException;

class CheckpointSectionTest {
  private static final String REST =
      "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"shop\"\nurl = \"tcp://127.0.0.1:1883\"\n";

  @TempDir private Path temp;
  private ConfigDirectory directory;

  @BeforeEach
  void everythingThatIsNamedExists() throws IOException {
    directory = new ConfigDirectory(temp);
  }

  private CheckpointConfig read(String... lines) throws IOException {
    String section = lines.length == 0 ? "" : "[checkpoints]\n" + String.join("\n", lines) + "\n";
    return directory.read(section + REST).checkpoints();
  }

  private void fault(String expected, String... lines) {
    assertThatThrownBy(() -> read(lines))
        .isInstanceOf(FaultsException.class)
        .hasMessage(expected.replace("TEMP", temp.toString()));
  }

  @Test
  void withoutTheSectionTheyGoToTheBrokerOnceAMinuteAndNowhereElse() throws IOException {
    assertThat(read()).isEqualTo(CheckpointConfig.USUAL);
    assertThat(read("publish-every = \"5 s\"").publishEvery()).isEqualTo(Duration.ofSeconds(5));
  }

  @ParameterizedTest
  @CsvSource({"1 s,1", "90 s,90", "15 min,900", "24 h,86400", "744 h,2678400"})
  void everyIsALengthOfTimeUpToAMonth(String text, long seconds) throws IOException {
    assertThat(read("drop = \"checkpoints\"", "every = \"" + text + "\"").every())
        .isEqualTo(Duration.ofSeconds(seconds));
  }

  @ParameterizedTest
  @CsvSource({"0 s", "745 h", "3 days", "24h", "500 ms", "-1 h"})
  void anyOtherLengthIsAFault(String text) {
    fault(
        "TEMP/shop.toml:3:1: \""
            + text
            + "\" is no length of time; write a number and s, min or h, e.g. \"24 h\", 1 s to 744 h",
        "drop = \"checkpoints\"",
        "every = \"" + text + "\"");
  }

  @Test
  void whatCannotBeDroppedIsAFault() {
    fault(
        "TEMP/shop.toml:2:1: there is no directory TEMP/nowhere; make it, best on another machine's"
            + " disk, or name one that exists",
        "drop = \"nowhere\"");
    fault(
        "TEMP/shop.toml:2:1: nothing is dropped anywhere; name the directory with drop",
        "every = \"1 h\"");
  }

  @Test
  void aDirectoryThatIsAFileIsCalledOne() {
    fault(
        "TEMP/shop.toml:2:1: TEMP/broker-password.txt is not a directory; make it, best on another"
            + " machine's disk, or name one that exists",
        "drop = \"broker-password.txt\"");
  }

  @ParameterizedTest
  @CsvSource({".", "checkpoints", "tls/../checkpoints"})
  void whatLiesInTheDataDirectoryKeepsNothingOutside(String drop) {
    String toml = REST.replace("[[mqtt]]", "data = \".\"\n[[mqtt]]");
    assertThatThrownBy(() -> directory.read("[checkpoints]\ndrop = \"" + drop + "\"\n" + toml))
        .isInstanceOf(FaultsException.class)
        .hasMessage(
            temp
                + "/shop.toml:2:1: "
                + temp.resolve(drop)
                + " lies in the data directory "
                + temp.resolve(".")
                + ", so whoever loses or rewrites the log has the checkpoints, too; name a directory"
                + " outside it, best on another machine's disk");
  }

  @Test
  void besideTheDataDirectoryIsOutside() throws IOException {
    String toml = REST.replace("[[mqtt]]", "data = \"tls\"\n[[mqtt]]");
    assertThat(directory.read("[checkpoints]\ndrop = \"checkpoints\"\n" + toml).checkpoints())
        .satisfies(c -> assertThat(c.within(temp)).isTrue())
        .satisfies(c -> assertThat(c.within(temp.resolve("tls"))).isFalse());
  }
}
