package witnessmark.stats;

/**
 * Two numbers between which a true value lies with a stated confidence.
 *
 * @param low the lower one
 * @param high the upper one
 */
public record Interval(double low, double high) {}
