package witnessmark.sample;

import witnessmark.entry.Word;

/** Why a reading is no value of the process. */
public enum Omission implements Word {
  NOT_ACCEPTED("was judged and not accepted", "were judged and not accepted"),
  DONE_AGAIN(
      "was accepted, then undone and done again, or done again over it",
      "were accepted, then undone and done again, or done again over them"),
  UNDONE(
      "was accepted, and the fastener was undone later",
      "were accepted, and their fasteners were undone later"),
  HIT_AGAIN(
      "hit a tight fastener again: such a torque is that of a check, not of a tightening",
      "hit a tight fastener again: such a torque is that of a check, not of a tightening"),
  LOOSENED("loosened", "loosened"),
  OUT_OF_TURN(
      "came before its turn, or on a fastener that waits for a disposition",
      "came before their turn, or on fasteners that wait for a disposition"),
  NOT_RELIED_ON(
      "could not be relied on (wrench, calibration, angle or uncertainty)",
      "could not be relied on (wrench, calibration, angle or uncertainty)"),
  ANOTHER_PASS("was of another pass", "were of another pass"),
  NOWHERE("was placed on no fastener", "were placed on no fastener"),
  SET_ASIDE("was set aside by a person", "were set aside by a person");

  private final String one;
  private final String many;

  Omission(String one, String many) {
    this.one = one;
    this.many = many;
  }

  /** Number and reason, as {@code 3 hit a tight fastener again: …}. */
  public String text(int count) {
    return count + " " + (count == 1 ? one : many);
  }
}
