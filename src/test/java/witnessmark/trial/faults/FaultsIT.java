package witnessmark.trial.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The fault trials in their short form; the long one is a command (see docs/fault-trials.md). */
class FaultsIT {
  @TempDir private Path directory;

  static Stream<String> titles() {
    return Faults.all().stream().map(Fault::title);
  }

  @ParameterizedTest
  @MethodSource("titles")
  void everyPromiseHolds(String title) throws Exception {
    Fault fault =
        Faults.all().stream().filter(f -> f.title().equals(title)).findFirst().orElseThrow();
    Row row = fault.run(directory, 1);
    assertThat(row.broken()).as("%s; seen: %s", row.figures(), row.seen()).isEmpty();
  }
}
