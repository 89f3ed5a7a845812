package witnessmark.cli.answer;

import java.util.Comparator;
import java.util.List;
import witnessmark.sight.Mistake;

/**
 * In which order mistakes are told. First comes what leaves a fastener loose or damaged behind a
 * record that looks right; last what no wrench reveals at any rate, and what does no harm.
 */
final class Gravity {
  static final List<Mistake> WORST_FIRST =
      List.of(
          Mistake.HIDDEN_SKIP,
          Mistake.DOUBLE_HIT,
          Mistake.TIGHT_BEFORE,
          Mistake.CROSS_THREADED,
          Mistake.OVER,
          Mistake.UNDER,
          Mistake.WRONG_PLACE,
          Mistake.AGAIN_AFTER_UNDER,
          Mistake.TOO_EARLY,
          Mistake.WRONG_GROUP,
          Mistake.LOOSE_AT_CHECK,
          Mistake.SKIP,
          Mistake.MISSING_WASHER,
          Mistake.EXCHANGED);

  static final Comparator<Mistake> ORDER = Comparator.comparingInt(WORST_FIRST::indexOf);

  private Gravity() {}
}
