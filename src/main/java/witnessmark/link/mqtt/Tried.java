package witnessmark.link.mqtt;

/**
 * One step of a trial of a broker.
 *
 * @param outcome how it went
 * @param found what was found, a sentence
 * @param next what to do about it; empty where nothing is to be done
 */
public record Tried(Outcome outcome, String found, String next) {
  /** How a step went. */
  public enum Outcome {
    GOOD,
    /** It works now and will not for long. */
    SOON,
    FAILED
  }

  static Tried good(String found) {
    return new Tried(Outcome.GOOD, found, "");
  }

  static Tried failed(String found, String next) {
    return new Tried(Outcome.FAILED, found, next);
  }
}
