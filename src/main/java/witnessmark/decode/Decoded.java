package witnessmark.decode;

/** What one thing received turned out to be. */
public sealed interface Decoded permits Torqued, Scanned, Malformed {}
