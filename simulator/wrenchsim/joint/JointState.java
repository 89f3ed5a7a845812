package wrenchsim.joint;

/** How a joint stands, seen from its lowest and highest acceptable torque. */
public enum JointState {
  /** Never tightened: run down by hand. */
  LOOSE("loose"),
  /** Tightened, but below the lowest acceptable torque. */
  SNUG("snug"),
  /** Tightened within the acceptable torque. */
  TIGHT("tight"),
  /** Tightened above the highest acceptable torque. */
  OVERTIGHTENED("overtightened"),
  /** Cross-threaded: it bound before the parts met, so it holds a torque and clamps nothing. */
  CROSSED("crossed"),
  /** Tightened once and undone since. */
  LOOSENED("loosened");

  private final String word;

  JointState(String word) {
    this.word = word;
  }

  /** The word for it in the truth file. */
  public String word() {
    return word;
  }
}
