package witnessmark.link.mqtt;

/** A broker that cannot be used now; the message tells the person who runs it why. */
final class BrokerException extends Exception {
  BrokerException(String message, Throwable cause) {
    super(message, cause);
  }
}
