package witnessmark.link.serial;

/** The check bit of a serial character. */
public enum Parity {
  NONE,
  ODD,
  EVEN
}
