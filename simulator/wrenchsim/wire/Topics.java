package wrenchsim.wire;

/**
 * The topics of one station.
 *
 * @param station 1 to 64 of {@code A-Z a-z 0-9 . _ -}, not {@code .} or {@code ..}
 */
public record Topics(String station) {

  public Topics {
    if (!station.matches("[A-Za-z0-9._-]{1,64}") || station.matches("\\.{1,2}")) {
      throw new IllegalArgumentException(
          "a station is 1 to 64 of A-Z a-z 0-9 . _ - and not . or .., but got '" + station + "'");
    }
  }

  /** Where torque readings go. */
  public String torque() {
    return "witnessmark/v1/" + station + "/torque";
  }

  /** Where scanned labels go. */
  public String scan() {
    return "witnessmark/v1/" + station + "/scan";
  }

  /** Where verdicts come from. */
  public String verdict() {
    return "witnessmark/v1/" + station + "/verdict";
  }

  /** Where what is expected next is retained. */
  public String expect() {
    return "witnessmark/v1/" + station + "/expect";
  }
}
