package wrenchsim.wrench;

/**
 * How a wrench works out of range: it keeps its readings and delivers them at once when it is back.
 *
 * @param readings how many it keeps before it is back in range, 1 to 10 000
 * @param away the share of readings in range at which it goes out of range
 * @param twice the share of deliveries that come a second time
 * @param half the share of deliveries of which the later half comes again
 */
public record Store(int readings, double away, double twice, double half) {

  public Store {
    if (readings < 1 || readings > 10_000) {
      throw new IllegalArgumentException(
          "a wrench stores 1 to 10000 readings, but got " + readings);
    }
    for (double share : new double[] {away, twice, half}) {
      if (!(share >= 0 && share <= 1)) {
        throw new IllegalArgumentException(
            "away, twice and half are shares of 0 to 1, but got " + share);
      }
    }
  }
}
