package witnessmark.ledger;

/**
 * An entry on record.
 *
 * @param n its number
 * @param bytes its exact bytes; not copied, so not to be changed
 */
public record Stored(long n, byte[] bytes) {}
