package witnessmark.cli.answer;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import witnessmark.sight.Mistake;

class GravityTest {
  @Test
  void everyMistakeHasItsPlace() {
    assertThat(Gravity.WORST_FIRST).containsExactlyInAnyOrder(Mistake.values());
  }

  @Test
  void whatNoWrenchRevealsAndWhatDoesNoHarmComesLast() {
    assertThat(Gravity.WORST_FIRST).startsWith(Mistake.HIDDEN_SKIP);
    assertThat(Gravity.WORST_FIRST).endsWith(Mistake.MISSING_WASHER, Mistake.EXCHANGED);
  }
}
