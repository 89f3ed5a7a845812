package witnessmark.job;

/**
 * The public half of a person's key.
 *
 * @param entry the entry that enrolled it
 * @param publicKey the 32 bytes of an Ed25519 public key in base64
 */
public record OperatorKey(long entry, String publicKey) {}
