package witnessmark.sight;

import java.util.Locale;

/** What may go wrong at a bench. */
public enum Mistake {
  /** One is skipped, and a second hit on another of its group takes its place. */
  HIDDEN_SKIP("one is skipped, hidden by a second hit on another of the group"),
  /** One is left out, and nothing else happens. */
  SKIP("one is left out"),
  /** A tight one is hit again at its own torque, and nothing else happens. */
  DOUBLE_HIT("a tight one is hit again"),
  /** A tight one is hit again while the expected one stands below its band. */
  AGAIN_AFTER_UNDER("a tight one is hit again while the next stands below its band"),
  /** Two look-alikes of a group in the other order. */
  EXCHANGED("two look-alikes are done in the other order"),
  /** A fastener of another open group at its own torque. */
  WRONG_GROUP("one of another open group, at its own torque"),
  /** A fastener of a later pass or group, at its own torque. */
  TOO_EARLY("one whose turn comes later, at its own torque"),
  /** A fastener of any other group at this one's torque. */
  WRONG_PLACE("one of another group is pulled to this torque instead"),
  /** It ended below the band. */
  UNDER("too little torque"),
  /** It went above the band, on the expected one or a tight one. */
  OVER("too much torque, also on a tight one"),
  /** The torque was reached at too small an angle. */
  CROSS_THREADED("a crossed thread reaches the torque early"),
  MISSING_WASHER("a washer is missing"),
  /** It was brought to torque before, without a reading. */
  TIGHT_BEFORE("it was tight before its first reading"),
  /** A fastener that a check pass finds loose. */
  LOOSE_AT_CHECK("the check finds one loose");

  private final String words;

  Mistake(String words) {
    this.words = words;
  }

  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What happens, in a few words. */
  public String words() {
    return words;
  }
}
