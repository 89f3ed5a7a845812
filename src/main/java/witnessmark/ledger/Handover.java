package witnessmark.ledger;

/**
 * That the log goes from one key to another, vouched for by the one before.
 *
 * @param from the verifier key that signed before
 * @param to the verifier key that signs from now on
 * @param voucher a C2SP signed note of the old key over the new one and the number of the entry
 *     that holds this
 */
public record Handover(String from, String to, String voucher) {
  /** The kind of entry that holds one. */
  public static final String KIND = "log-key-changed";

  /**
   * The old key's word for the new one.
   *
   * @param n the number of the entry that holds it
   * @throws IllegalArgumentException when they are keys of different logs, or the same
   */
  public static Handover of(LogKey old, LogKey next, long n) {
    if (!old.name().equals(next.name()) || old.verifierLine().equals(next.verifierLine())) {
      throw new IllegalArgumentException("not another key of the log " + old.name());
    }
    // The first line is no origin of a log, so that no voucher can pass for a checkpoint.
    String text =
        "witnessmark.local/log-key-voucher@v1\n"
            + old.name()
            + "\n"
            + next.verifierLine()
            + "\n"
            + n
            + "\n";
    return new Handover(old.verifierLine(), next.verifierLine(), old.note(text));
  }
}
