package witnessmark.ledger.verify;

/** Numbers of entries as they are written: decimal, one text for each. */
final class Decimal {
  private Decimal() {}

  static long read(String text, String where) throws ProofFault {
    try {
      if (text.matches("0|[1-9][0-9]{0,18}")) {
        return Long.parseLong(text);
      }
    } catch (NumberFormatException e) {
      // Falls to the sentence below: more than a log can have.
    }
    throw new ProofFault(
        "expected a number in decimal without leading zeros in "
            + where
            + ", found "
            + Cells.show(text));
  }
}
