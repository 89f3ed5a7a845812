package witnessmark.trial;

import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Judged;

/** What the record says of a reading in the end: the columns of the table. */
enum Recorded {
  RIGHT("credited where it was"),
  EXCHANGED("credited to a look-alike neighbour"),
  WRONG("credited wrongly"),
  UNSEEN("credited, the fault unseen"),
  RECHECKED("known as a second hit"),
  AGAIN("not accepted: again"),
  NONCONFORMING("nonconforming"),
  LOOSENED("undone"),
  ASKED("asked for its place"),
  NOTHING("credited to nothing"),
  COUNTED("counted as a repeat");

  private final String words;

  Recorded(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  /**
   * What a decision says of what happened.
   *
   * @param twice whether the bolt that was really turned has credit for that pass already
   */
  static Recorded of(Done done, Happened what, Judged judged, boolean twice) {
    if (done.asked()) {
      return ASKED;
    }
    return switch (judged.effect()) {
      case CREDITED -> twice ? WRONG : credited(done, what, judged);
      case RECHECKED -> RECHECKED;
      case AGAIN -> AGAIN;
      case NONCONFORMING -> NONCONFORMING;
      case LOOSENED -> LOOSENED;
      case ASKS -> ASKED;
      case NONE -> NOTHING;
    };
  }

  private static Recorded credited(Done done, Happened what, Judged judged) {
    Optional<String> place = Optional.of(done.place());
    boolean there = place.equals(judged.fastener());
    boolean group = place.map(Happened::step).equals(judged.fastener().map(Happened::step));
    return switch (what) {
      case GOOD, GOOD_LATE, OUT_OF_TURN, NEIGHBOUR, SECOND_HIT ->
          there ? RIGHT : group ? EXCHANGED : WRONG;
      case CROSSED, AT_A_LIMIT -> group ? UNSEEN : WRONG;
      case WRONG_FASTENER -> there ? RIGHT : WRONG;
      default -> WRONG;
    };
  }

  static boolean asks(Judged judged) {
    return judged.effect() == Effect.ASKS;
  }
}
