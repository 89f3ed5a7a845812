package witnessmark.trial;

import wrenchsim.joint.JointState;
import wrenchsim.truth.Happening;

/** What really happened at a reading: the rows of the table. */
enum Happened {
  GOOD("the due fastener, tightened well"),
  GOOD_LATE("the same, delivered late"),
  OUT_OF_TURN("the same, while one of its group was overtightened and a decision on it was due"),
  UNDER("the due fastener, stopped below its band"),
  OVER("the due fastener, pulled above its band"),
  AT_A_LIMIT("the due fastener, just outside its band where the wrench shows just inside"),
  CROSSED("the due fastener, threads crossed"),
  NEIGHBOUR("a look-alike neighbour in its place, tightened well"),
  SECOND_HIT("a tight fastener, hit again"),
  WRONG_FASTENER("a fastener of another step"),
  WRONG_WRENCH("the due fastener, with a wrench that must not be used there"),
  LOOSENED("a fastener undone"),
  REPEAT("nothing; a message came again");

  private final String words;

  Happened(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  /**
   * What a happening was.
   *
   * @param shownInside whether the reading lies in the band, whatever the torque really was
   */
  static Happened of(Done done, boolean shownInside) {
    Happening h = done.happening();
    if (h.act() == Happening.Act.REDELIVER) {
      return REPEAT;
    }
    if (h.act() == Happening.Act.LOOSEN) {
      return LOOSENED;
    }
    String place = h.work().fastener().orElse("");
    String due = h.work().expected().orElse(place);
    if (h.mistake().filter(m -> m.startsWith("wrongtool")).isPresent()) {
      return WRONG_WRENCH;
    }
    if (!step(place).equals(step(due))) {
      return WRONG_FASTENER;
    }
    JointState before = h.turn().before();
    if (before == JointState.TIGHT || before == JointState.OVERTIGHTENED) {
      return SECOND_HIT;
    }
    return switch (h.turn().after()) {
      case SNUG -> shownInside ? AT_A_LIMIT : UNDER;
      case OVERTIGHTENED -> shownInside ? AT_A_LIMIT : OVER;
      case CROSSED -> CROSSED;
      case TIGHT -> place.equals(due) ? good(done) : NEIGHBOUR;
      case LOOSE, LOOSENED -> throw new IllegalStateException("a pull leaves nothing loose: " + h);
    };
  }

  private static Happened good(Done done) {
    return done.outOfTurn() ? OUT_OF_TURN : done.late() ? GOOD_LATE : GOOD;
  }

  static String step(String fastener) {
    return fastener.substring(0, Math.max(0, fastener.indexOf('/')));
  }
}
