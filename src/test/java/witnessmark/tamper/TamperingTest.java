package witnessmark.tamper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.tamper.Examiner.Outcome;

/** The short form of the run in docs/tampering.md. */
class TamperingTest {
  @TempDir Path directory;

  @Test
  void nothingThatChangesTheRecordGoesUnrevealed() throws Exception {
    long seed = new Random().nextInt();
    List<Count> counts = Tampering.run(directory, 120, seed);
    assertThat(counts).hasSizeGreaterThan(25);
    for (Count count : counts) {
      String kind = count.kind().name() + ", seed " + seed;
      assertThat(count.unrevealed()).as(kind).isEmpty();
      String name = count.kind().name();
      if (name.equals(Rewrites.STOLEN) || name.equals(Rewrites.OLDER)) {
        assertThat(count.of(Outcome.BY_WHAT_IS_KEPT)).as(kind).isEqualTo(count.edits());
      } else if (name.contains("no part of the record")) {
        assertThat(count.of(Outcome.WITHOUT_EFFECT)).as(kind).isEqualTo(count.edits());
      } else if (name.matches("(entry|checkpoint|tile|trace|job|schema): .*")) {
        assertThat(count.of(Outcome.BY_VERIFY)).as(kind).isEqualTo(count.edits());
      }
    }
    assertThat(counts.stream().mapToInt(c -> c.of(Outcome.BY_VERIFY)).sum())
        .as("revealed by verify, seed %d", seed)
        .isGreaterThan(60);
  }
}
