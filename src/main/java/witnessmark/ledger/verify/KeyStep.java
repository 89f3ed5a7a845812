package witnessmark.ledger.verify;

/**
 * A change of the log's key that its old key vouched for.
 *
 * @param entry the number of the entry that says so, from which on the new key signs
 * @param from the old key's id, eight hexadecimal digits
 * @param to the new key's id
 */
public record KeyStep(long entry, String from, String to) {}
