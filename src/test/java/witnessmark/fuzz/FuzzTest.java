package witnessmark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The short form of the run in docs/fuzzing.md. */
class FuzzTest {
  private static final int INPUTS = 100_000;

  @Test
  void noParserFailsOnWhatComesFromOutside() throws Exception {
    long seed = Long.getLong("fuzz.seed", new Random().nextInt());
    List<Tally> tallies = Fuzz.run(INPUTS, seed, 2);
    assertThat(tallies).hasSizeGreaterThan(15);
    for (Tally tally : tallies) {
      assertThat(tally.faults().stream().map(Fault::what))
          .as("%s, seed %d", tally.name(), seed)
          .isEmpty();
      assertThat(tally.taken()).as("taken by %s, seed %d", tally.name(), seed).isPositive();
      assertThat(tally.kinds()).as("answers of %s, seed %d", tally.name(), seed).isGreaterThan(1);
    }
  }
}
