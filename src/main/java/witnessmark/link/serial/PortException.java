package witnessmark.link.serial;

/** A port that cannot be opened now; the message tells the person who runs it why. */
public final class PortException extends Exception {
  PortException(String message) {
    super(message);
  }
}
