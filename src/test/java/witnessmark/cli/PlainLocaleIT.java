package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Workshop;

/** What is written for machines is the same where nobody set a locale, such as under cron. */
class PlainLocaleIT {
  @TempDir Path directory;

  @Test
  void aCheckpointKeptByACronJobCanBeReadAgain() throws Exception {
    Workshop shop = Workshop.empty(directory);
    File kept = directory.resolve("kept.txt").toFile();
    String jar = System.getProperty("witnessmark.jar", "target/witnessmark.jar");
    ProcessBuilder job =
        new ProcessBuilder(
            "java", "-jar", Path.of(jar).toAbsolutePath().toString(), "ledger", "checkpoint");
    job.environment().put("LC_ALL", "C");
    assertThat(job.directory(directory.toFile()).redirectOutput(kept).start().waitFor()).isZero();
    assertThat(Files.readString(kept.toPath())).contains("\n\u2014 witnessmark.local/log/");
    assertThat(shop.run("ledger", "verify", "--since", kept.toString()))
        .contains("The first is the one that the kept checkpoint signs.");
  }
}
